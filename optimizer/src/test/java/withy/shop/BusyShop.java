package withy.shop;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import withy.catalog.Catalog;
import withy.fixture.Fixtures;

/** A child process that writes to a shop, step after step, and tells before and after each step. */
final class BusyShop {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    private static final String[] PARTS = {"seat", "cap", "check", "keeper", "tip-top"};

    private final Path folder;
    private final Random random;

    private BusyShop(Path folder, long seed) {
        this.folder = folder;
        this.random = new Random(seed);
    }

    /** What a child told: the lines of the ledger after each step, and the step it was in. */
    static final class Told {
        private long movements;
        private long other;
        private String in = "";

        void take(String line) {
            String[] words = line.split(" ", -1);
            if (words[0].equals("done")) {
                movements = Long.parseLong(words[1]);
                other = movements;
                in = "";
            } else {
                in = words[1];
                other = Long.parseLong(words[2]);
            }
        }

        boolean inside() {
            return !in.isEmpty();
        }

        /** Nothing told as done is missing; a restore in flight is there altogether or not at all. */
        boolean agrees(long found) {
            return in.equals("restore") ? found == movements || found == other : found >= movements;
        }

        @Override
        public String toString() {
            return movements + " lines, then " + (in.isEmpty() ? "nothing" : in + " " + other);
        }
    }

    static Process start(Path folder, long seed, int steps) throws IOException {
        return new ProcessBuilder(command("write", folder, Long.toString(seed), Integer.toString(steps))).start();
    }

    static Process receiving(Path folder, int times) throws IOException {
        return new ProcessBuilder(command("receive", folder, Integer.toString(times), "0")).start();
    }

    /** A child that may not make any file longer than so many KiB. */
    static Process startLimited(Path folder, long seed, long kib) throws IOException {
        List<String> command = new ArrayList<>(List.of("bash", "-c", "ulimit -f " + kib + "; exec \"$@\"", "limited"));
        command.addAll(command("grow", folder, Long.toString(seed), "100000"));
        return new ProcessBuilder(command).start();
    }

    /** A child that may read the folder and not write in it: another user where this one may do everything. */
    static Process startWithoutRights(Path folder) throws IOException {
        Path program = folder.resolveSibling(folder.getFileName() + "-program");
        Path classes = Files.createDirectories(program);
        List<String> places = new ArrayList<>();
        for (Path place : places()) {
            Path copy = classes.resolve(places.size() + "-" + place.getFileName());
            copy(place, copy);
            places.add(copy.toString());
        }
        for (Path up = folder; up != null && up.startsWith(System.getProperty("java.io.tmpdir")); up = up.getParent()) {
            if (Files.isWritable(up) && !up.equals(Path.of(System.getProperty("java.io.tmpdir")))) {
                Files.setPosixFilePermissions(up, PosixFilePermissions.fromString("r-xr-xr-x"));
            }
        }
        List<String> command = new ArrayList<>();
        if (System.getProperty("user.name").equals("root")) {
            command.addAll(List.of("setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"));
        }
        command.addAll(command(String.join(":", places), "look", folder, "0", "0"));
        return new ProcessBuilder(command).start();
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> files = Files.walk(from)) {
            for (Path file : files.toList()) {
                Path target = to.resolve(from.relativize(file).toString());
                if (Files.isDirectory(file)) {
                    Files.createDirectories(target);
                } else {
                    Files.copy(file, target, StandardCopyOption.REPLACE_EXISTING);
                }
            }
        }
    }

    private static List<String> command(String what, Path folder, String... rest) {
        List<String> places = places().stream().map(Path::toString).toList();
        return command(String.join(":", places), what, folder, rest);
    }

    private static List<String> command(String places, String what, Path folder, String... rest) {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-XX:TieredStopAtLevel=1",
                "-Xshare:auto",
                "-cp",
                places,
                BusyShop.class.getName(),
                what,
                folder.toString()));
        command.addAll(List.of(rest));
        return command;
    }

    private static Set<Path> places() {
        Set<Path> places = new LinkedHashSet<>();
        for (Class<?> one : List.of(Shop.class, BusyShop.class, org.sqlite.JDBC.class)) {
            places.add(Path.of(
                    one.getProtectionDomain().getCodeSource().getLocation().getPath()));
        }
        return places;
    }

    /** {@code write|grow FOLDER SEED STEPS}, {@code receive FOLDER TIMES 0}, {@code look FOLDER 0 0}. */
    public static void main(String[] args) {
        BusyShop busy = new BusyShop(Path.of(args[1]), Long.parseLong(args[2]));
        try {
            switch (args[0]) {
                case "receive" -> busy.receive(Integer.parseInt(args[2]));
                case "look" -> busy.look();
                case "grow" -> busy.grow(Integer.parseInt(args[3]));
                default -> busy.write(Integer.parseInt(args[3]));
            }
        } catch (ShopFault fault) {
            System.err.println(fault.getMessage());
            System.exit(fault.ofDisk() ? 5 : 3);
        }
    }

    private void receive(int times) {
        try (Shop shop = Shop.writing(folder, DAY)) {
            for (int i = 1; i <= times; i++) {
                shop.stock().receive("seat", 1, "");
                System.out.println(i);
            }
        }
    }

    private void look() {
        try (Shop shop = Shop.reading(folder, DAY)) {
            System.out.println("seat " + shop.stock().level("seat").shelf());
        }
        try (Shop shop = Shop.writing(folder, DAY)) {
            shop.stock().receive("seat", 1, "");
        }
    }

    private void grow(int steps) {
        try (Shop shop = Shop.writing(folder, DAY)) {
            for (int i = 0; i < steps; i++) {
                System.out.println("in receive 0");
                shop.stock().receive("seat", 50, "");
                tell(shop);
            }
        }
    }

    private void write(int steps) {
        Catalog lists = Fixtures.legal().catalog();
        for (int i = 0; i < steps; i++) {
            try (Shop shop = Shop.beginning(folder, lists, DAY)) {
                if (i == 0) {
                    tell(shop);
                }
                step(shop);
            }
        }
    }

    private void step(Shop shop) {
        String part = PARTS[random.nextInt(PARTS.length)];
        String what = List.of(
                        "count", "receive", "order", "broken", "use", "return", "cancel", "weigh", "import", "undo",
                        "job", "job", "job", "job", "backup", "restore")
                .get(random.nextInt(16));
        if (what.equals("restore")) {
            restore(shop);
            return;
        }
        System.out.println("in " + what + " 0");
        try {
            move(shop, what, part);
        } catch (ShopFault refused) {
            if (refused.kind() != ShopFault.Kind.REFUSED) {
                throw refused;
            }
        }
        tell(shop);
    }

    private void move(Shop shop, String what, String part) {
        Stock stock = shop.stock();
        switch (what) {
            case "count" -> stock.count(part, random.nextInt(12), "");
            case "receive" -> stock.receive(part, 1 + random.nextInt(6), "");
            case "order" -> stock.order(part, 1 + random.nextInt(6), DAY.plusDays(random.nextInt(20)), "");
            case "broken" -> stock.broken(part, 1 + random.nextInt(3), "");
            case "use" -> stock.used(part, 1, "");
            case "return" -> stock.returned(part, 1, "");
            case "cancel" -> stock.cancel(part, 1, "");
            case "weigh" -> shop.scale().weigh(part, null, 1 + random.nextInt(20_000));
            case "import" ->
                shop.imports().apply(new TreeMap<>(Map.of(part, random.nextInt(9))), new TreeMap<>(Map.of(part, (long)
                        random.nextInt(900))));
            case "undo" -> shop.imports().undo();
            case "backup" -> {
                Backups.backup(folder, folder.resolve("copy-" + random.nextLong() + ".db"));
            }
            default -> job(shop, part);
        }
    }

    private void job(Shop shop, String part) {
        Jobs jobs = shop.jobs();
        List<Job> open = jobs.all().stream()
                .filter(job -> job.state() != Job.State.CLOSED && job.state() != Job.State.CANCELLED)
                .toList();
        Job job = open.isEmpty() || random.nextInt(4) == 0
                ? jobs.add("rod", "{}", null)
                : open.get(random.nextInt(open.size()));
        List<Need> needs = List.of(new Need(part, 1 + random.nextInt(4), 7, 3), new Need("cap", 1, 7, 1));
        switch (random.nextInt(7)) {
            case 0 -> jobs.offer(job, "hash", "{}", "shown", "{}");
            case 1, 2 -> jobs.accept(job, "{}", "{}", needs, "");
            case 3 -> jobs.glue(job, Set.of("buttCap"), Map.of("cap", 1));
            case 4 -> jobs.built(job);
            case 5 -> jobs.weighed(job, 80_000, null, 83_000, 2_000);
            default -> {
                if (random.nextBoolean()) {
                    jobs.cancel(job, "");
                } else {
                    jobs.close(job);
                }
            }
        }
    }

    private void restore(Shop shop) {
        Path copy = folder.resolve("copy-" + random.nextLong() + ".db");
        System.out.println("in backup 0");
        Backups.Copy made = Backups.backup(folder, copy);
        tell(shop);
        System.out.println("in receive 0");
        shop.stock().receive("seat", 1, "");
        tell(shop);
        shop.close();
        System.out.println("in restore " + made.movements());
        Backups.restore(folder, copy);
        try (Shop again = Shop.writing(folder, DAY)) {
            tell(again);
        }
    }

    private static void tell(Shop shop) {
        List<Movement> last = shop.stock().ledger(null, 1);
        System.out.println("done " + (last.isEmpty() ? 0 : last.get(0).id()));
    }
}
