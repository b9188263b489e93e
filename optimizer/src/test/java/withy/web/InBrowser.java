package withy.web;

import org.junit.jupiter.api.BeforeAll;

/** The sample shop in the shared browser, let in. */
abstract class InBrowser extends OpenShop {
    static Browser browser;

    @BeforeAll
    static void openBrowser() {
        browser = Browser.shared();
        browser.open(shop.address().toString());
    }
}
