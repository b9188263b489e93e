package withy.web;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;

/** The sample shop with its page open, for all tests of a class. */
abstract class OpenShop {
    @TempDir
    static Path scratch;

    static ShopFolder shop;

    @BeforeAll
    static void openShop() throws Exception {
        shop = new ShopFolder(scratch, "bench");
    }

    @AfterAll
    static void closeShop() {
        shop.close();
    }
}
