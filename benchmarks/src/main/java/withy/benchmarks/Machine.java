package withy.benchmarks;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * What the figures were taken on.
 *
 * @param processor name of the processor, or its architecture where the system does not tell
 * @param cores cores the process may use
 * @param memory memory of the machine
 * @param system operating system
 * @param java Java machine
 * @param loadBefore processes that wanted a core in the minute before the first figure, or negative where unknown
 */
record Machine(String processor, int cores, String memory, String system, String java, double loadBefore) {
    /** Above this share of the cores, others were at work. */
    private static final double BUSY_SHARE = 0.25;

    private static final double GIB = 1L << 30;

    /** As it is now. */
    static Machine now() {
        return new Machine(
                processorName(),
                Runtime.getRuntime().availableProcessors(),
                memoryWords(),
                System.getProperty("os.name") + " " + System.getProperty("os.arch"),
                System.getProperty("java.vm.name") + " " + System.getProperty("java.runtime.version"),
                load());
    }

    boolean busy() {
        return loadBefore > BUSY_SHARE * cores;
    }

    /** Load over the last minute. */
    static double load() {
        return ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    }

    String loadWords() {
        return loadBefore < 0 ? "unknown" : String.format(Locale.ROOT, "%.2f", loadBefore);
    }

    private static String memoryWords() {
        return ManagementFactory.getOperatingSystemMXBean() instanceof com.sun.management.OperatingSystemMXBean system
                ? Math.round(system.getTotalMemorySize() / GIB) + " GiB of memory"
                : "memory unknown";
    }

    private static String processorName() {
        Path file = Path.of("/proc/cpuinfo");
        if (Files.isReadable(file)) {
            try {
                for (String line : Files.readAllLines(file, StandardCharsets.UTF_8)) {
                    if (line.startsWith("model name")) {
                        return line.substring(line.indexOf(':') + 1).strip();
                    }
                }
            } catch (IOException e) {
                return System.getProperty("os.arch");
            }
        }
        return System.getProperty("os.arch");
    }
}
