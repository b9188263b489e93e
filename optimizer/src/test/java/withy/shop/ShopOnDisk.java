package withy.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import withy.catalog.Catalog;
import withy.fixture.Fixtures;

/** A shop in a real file, open for a test and sound after it. */
abstract class ShopOnDisk {
    static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    @TempDir
    Path folder;

    final Catalog lists = Fixtures.legal().catalog();
    Shop shop;

    @BeforeEach
    void open() {
        shop = Shop.beginning(folder, lists, DAY);
    }

    @AfterEach
    void soundAndClosed() {
        shop.close();
        sound();
    }

    final void sound() {
        assertEquals(List.of(), Doctor.look(folder, lists, DAY).faults());
    }
}
