package withy.web;

import java.io.IOException;
import org.junit.jupiter.api.BeforeAll;

/** The sample shop asked without a browser. */
abstract class ByRequest extends OpenShop {
    static Caller page;

    @BeforeAll
    static void openCaller() throws IOException {
        page = new Caller(shop);
    }
}
