package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;

/** Every page in every state it can be in, photographed for people to look at, and measured: nothing cut off, nothing too small to press. */
@Tag("long")
class AlbumTest {
    private static final String SEAT = "marrick-tideway-r-16";
    private static final String OUT = "quernstone-featherlode-x-16";

    @TempDir
    Path scratch;

    private Browser browser;
    private Album album;

    @BeforeEach
    void open() {
        browser = Browser.shared();
        album = new Album(browser);
    }

    @AfterEach
    void nothingIsWrong() {
        assertEquals(List.of(), album.faults());
    }

    private void take(String name, String address) {
        browser.open(address).settled();
        album.take(name);
    }

    private String builds(ShopFolder shop, String start) {
        browser.open(shop.at("/brief?start=" + start));
        browser.click("button.main").arrive("/builds/", "");
        return browser.path();
    }

    @Test
    void theTalk() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            take("door", shop.at("/"));
            take("start-first", shop.address().toString());
            take("brief-empty", shop.at("/brief"));
            take("brief-filled", shop.at("/brief?start=estuary"));
            browser.open(shop.at("/brief"));
            browser.fill("#name", "Grayling in a weir pool").fill("#lure-usual", "9 g");
            browser.click("details.more summary");
            browser.fill("#customer", "Tove Arnhild Sandvik");
            browser.one("#lure-usual").sendKeys("\t");
            browser.settled();
            album.take("brief-half");
            browser.fill("#lure-usual", "lots").fill("#length", "2 m to 40 m").fill("#budget", "many <b>EUR</b>");
            browser.click("button.main").arrive("/brief", "");
            album.take("brief-faults");
            browser.open(shop.at("/brief?start=estuary"));
            browser.fill("#packedMax", "30 cm").one("#packedMax").sendKeys("\t");
            browser.until(() -> browser.text("#count").contains("nothing can be built"));
            album.take("brief-none");
            browser.click("button.main").arrive("/builds/", "");
            album.take("builds-none");
            browser.open(shop.at("/"));
            browser.click(".drawer summary").fill("#json", "{\"name\": \"Mullet\", \"lure\": 7}");
            browser.clickWords("form[@action='/paste']//button", "three builds").arrive("/paste", "");
            album.take("start-paste-fault");
            browser.open(shop.at("/builds/0123456789abcdef0123"));
            album.take("nowhere");
        }
    }

    @Test
    void theBuilds() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            browser.open(shop.address().toString());
            String path = builds(shop, "estuary");
            String step = path.substring("/builds/".length());
            album.take("builds");
            browser.all("details.drawer").forEach(d -> browser.driver.executeScript("arguments[0].open=true", d));
            album.take("builds-lines");
            take("brief-again", shop.at("/brief/" + step));
            take("drawer-seat", shop.at("/drawer/" + step + "/1/seat"));
            take("drawer-blank", shop.at("/drawer/" + step + "/1/blank"));
            take("why", shop.at("/why/" + step + "/" + SEAT));
            browser.open(shop.at("/drawer/" + step + "/1/seat"));
            browser.all("details.drawer").forEach(d -> browser.driver.executeScript("arguments[0].open=true", d));
            take("why-refused", browser.attribute("details.drawer a.button", "href"));
            take("lighter", shop.at("/lighter/" + step));
            take("around", shop.at("/around/" + step));
            browser.open(shop.at(path)).settled();
            browser.click("#parts-1 .part:nth-child(2) button[value=never]").arrive("/builds/", path);
            for (int i = 1; browser.all("article.build").size() == 3 && i < 12; i++) {
                String before = browser.path();
                browser.click("#parts-1 .part:nth-child(" + i + ") button[value=keep]")
                        .arrive("/builds/", before);
            }
            assertTrue(browser.all("article.build").size() < 3);
            album.take("builds-fewer");
            take("start-talks", shop.at("/"));
            take("builds-surf", shop.at(builds(shop, "beach")));
        }
    }

    @Test
    void theShop() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            browser.open(shop.address().toString());
            take("jobs-none", shop.at("/jobs"));
            take("plan-none", shop.at("/plan"));
            String path = builds(shop, "estuary");
            browser.click("form.takeform button[value='0']").arrive("/jobs/1", "");
            album.take("job-offered");
            browser.click("button[value=withdraw]")
                    .until(() -> !browser.all("button[value=offer]").isEmpty());
            album.take("job-withdrawn");
            browser.click(".undoing button")
                    .until(() -> !browser.all("button[value=accept]").isEmpty());
            browser.click("button[value=accept]")
                    .until(() -> !browser.all("input[name=station]").isEmpty());
            album.take("job-accepted");
            browser.open(shop.at(path)).settled();
            browser.click("form.takeform button[value='1']").arrive("/jobs", path);
            album.take("job-twice");
            take("out-if", shop.at("/out/" + OUT));
            take("stock", shop.at("/stock"));
            browser.click("#copy summary").clickWords("button", "Keep a copy").arrive("/backup/", "");
            album.take("copy");
            browser.open(shop.at("/stock")).click("#copy summary");
            album.take("stock-copied");
            take("stock-seats", shop.at("/stock?q=&kind=reel+seat"));
            take("stock-nothing", shop.at("/stock?q=zzz&kind="));
            take("part", shop.at("/stock/" + OUT));
            browser.click("button[value=out]").arrive("/out/", "");
            album.take("out");
            take("job-lost", shop.at("/jobs/1"));
            take("jobs-lost", shop.at("/jobs"));
            take("plan", shop.at("/plan"));
            browser.open(shop.at("/out/" + OUT)).settled();
            browser.click(".rung form button").arrive("/jobs/1", "");
            take("scale", shop.at("/weigh"));
            take("scale-job", shop.at("/jobs/1/scale"));
            browser.fill("#weight", "602.5 g").one("#weight").sendKeys("\n");
            browser.until(() -> browser.text().contains("is listed at"));
            album.take("scale-sure");
            while (!browser.open(shop.at("/jobs/1/scale")).all("#weight").isEmpty()) {
                String listed = browser.attribute("#weight", "placeholder");
                browser.fill("#weight", listed).click(".weighing button").settled();
            }
            album.take("scale-all");
            browser.open(shop.at("/jobs/1"));
            browser.click(".checklist li:nth-child(1) input").click(".checklist li:nth-child(3) input");
            browser.click("button[value=glue]").until(() -> browser.text().contains("glued"));
            album.take("job-glued");
            browser.click("button[value=cancel]").until(() -> browser.text().contains("Give it up?"));
            album.take("job-sure");
            browser.open(shop.at("/jobs/1"));
            browser.click("button[value=built]").until(() -> browser.text().contains("Is it built?"));
            album.take("job-built-sure");
            browser.clickWords("button", "Yes, it is built")
                    .until(() -> !browser.all("#balance").isEmpty());
            album.take("job-built");
            browser.fill("#weight", "101.3 g").fill("#balance", "93 mm");
            browser.click("button[value=weighed]").until(() -> browser.text().contains("It weighs"));
            album.take("job-weighed");
            browser.click("button[value=close]")
                    .until(() -> browser.all("button[value=cancel]").isEmpty());
            album.take("job-closed");
            builds(shop, "brook");
            browser.click("form.takeform button[value='1']").arrive("/jobs/2", "");
            browser.click("button[value=cancel]").until(() -> browser.text().contains("Give it up?"));
            browser.clickWords("button", "Yes").arrive("/jobs/2", "");
            browser.all("details.drawer").forEach(d -> browser.driver.executeScript("arguments[0].open=true", d));
            album.take("job-cancelled");
            take("paper-none", shop.at("/jobs/2/paper/bench"));
            take("jobs", shop.at("/jobs"));
            take("part-after", shop.at("/stock/" + OUT));
            take("scale-drift", shop.at("/weigh"));
            builds(shop, "child");
            browser.click("form.takeform button[value='1']").arrive("/jobs/3", "");
            browser.open(shop.at("/out/ostermoor-firstcast-158-2")).settled();
            browser.click(".rung form button").arrive("/jobs/3", "");
            album.take("job-again");
            browser.open(shop.at("/stock/tarnrigg-beck-155-2"))
                    .click("button[value=out]")
                    .arrive("/out/", "");
            take("job-stuck", shop.at("/jobs/3"));
        }
    }

    @Test
    void whatIsOnItsWay() throws Exception {
        CountDownLatch best = new CountDownLatch(1);
        CountDownLatch others = new CountDownLatch(1);
        CountDownLatch free = new CountDownLatch(0);
        CountDownLatch held = new CountDownLatch(1);
        AtomicReference<CountDownLatch> gate = new AtomicReference<>(free);
        try (ShopFolder shop = new ShopFolder(scratch, "bench", catalog -> new ComingTest.Slow(catalog, best, others) {
            @Override
            public Solution solve(Query query, Watch watch) {
                await(gate.get());
                return super.solve(query, watch);
            }
        })) {
            browser.open(shop.address().toString());
            browser.open(shop.at("/brief?start=estuary")).settled();
            browser.click("button.main").until(() -> browser.path().startsWith("/builds/"));
            String path = browser.path();
            album.take("builds-waiting");
            best.countDown();
            browser.until(() -> browser.all("article.build").size() == 1);
            album.take("builds-best");
            others.countDown();
            browser.settled();
            gate.set(held);
            browser.open(shop.at(path.replace("/builds/", "/why/") + "/" + SEAT));
            album.take("waiting");
            held.countDown();
            browser.settled();
        }
    }

    @Test
    void theDisk() throws Exception {
        try (ShopFolder shop = new ShopFolder(scratch, "bench")) {
            Files.writeString(shop.folder.resolve(Steps.FOLDER), "in the way");
            browser.open(shop.address().toString());
            builds(shop, "estuary");
            album.take("disk-talk");
            Files.createDirectory(withy.shop.Shop.file(shop.folder));
            browser.click("form.takeform button[value='1']")
                    .until(() -> browser.text().contains("Nothing was changed"));
            album.take("disk-job");
        }
    }
}
