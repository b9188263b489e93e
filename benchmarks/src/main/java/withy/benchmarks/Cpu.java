package withy.benchmarks;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;

/** Processor time of the whole process: what a measurement would take on a machine with nothing else to do, on one core. */
final class Cpu {
    private Cpu() {}

    /** Used so far, ms; 0 where the system does not tell. */
    static double ms() {
        return ManagementFactory.getOperatingSystemMXBean() instanceof OperatingSystemMXBean system
                ? Math.max(0, system.getProcessCpuTime()) / 1e6
                : 0;
    }
}
