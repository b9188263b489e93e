package withy.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withy.app.OurFault;
import withy.app.RefusedBuild;
import withy.shop.ShopFault;

/** The root command. */
@Command(
        name = "withy",
        versionProvider = Version.class,
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy demo                                      the whole job on sample data%n"
                + "  withy propose brief.json --catalog shop         three builds for a customer%n"
                + "  withy propose brief.json --priority weight=5    the same, weight above all%n"
                + "  withy measure build.json --brief brief.json     your own pick of parts%n"
                + "  withy bend build.json --brief brief.json        how it bends, how quick%n"
                + "  withy bendtest BLANK --reading 340g=690mm       a blank on your own wall%n"
                + "  withy whynot brief.json seat-tarn-17            why not that seat%n"
                + "  withy lighter brief.json                        can it be lighter?%n"
                + "  withy check shop                                what is wrong with the lists%n"
                + "  withy parts shop --kind seat --max-weight 20g   what is there%n"
                + "  withy stock PART --receive 6                    six came in%n"
                + "  withy job --new brief.json                      a customer came%n"
                + "  withy out PART                                  a part ran out: choose again%n"
                + "  withy plan                                      all open jobs from one stock%n"
                + "  withy paper offer answer.json --brief brief.json --out offer.pdf%n"
                + "  withy serve                                     all of it in a browser%n"
                + "%n",
        synopsisHeading = "Usage: ",
        synopsisSubcommandLabel = "COMMAND",
        descriptionHeading = "%n",
        description = "Chooses the parts of a custom fishing rod.",
        optionListHeading = "%nOptions:%n",
        commandListHeading = "%nCommands:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:fine",
            "1:our fault",
            "2:the command line is at fault",
            "3:brief, build or catalogue are at fault",
            "4:no build keeps every rule, or the measured one breaks one",
            "5:can't read or write",
            "130:interrupted, after printing the best so far"
        })
public final class Main implements Runnable {
    private final Surroundings surroundings;

    @Spec
    private CommandSpec spec;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    Main(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    Surroundings surroundings() {
        return surroundings;
    }

    /** The whole command line, ready to execute with the given streams. */
    public static CommandLine commandLine(PrintWriter out, PrintWriter err) {
        return commandLine(out, err, Surroundings.ofMachine(() -> false));
    }

    static CommandLine commandLine(PrintWriter out, PrintWriter err, Surroundings surroundings) {
        return commandLine(out, err, surroundings, Commands.ALL);
    }

    /** A command line that knows no other commands than these. */
    static CommandLine commandLine(
            PrintWriter to, PrintWriter talk, Surroundings surroundings, Map<String, Class<?>> commands) {
        PrintWriter out = PlainWriter.around(to);
        PrintWriter err = PlainWriter.around(talk);
        CommandLine line = new CommandLine(new Main(surroundings));
        commands.forEach(line::addSubcommand);
        return line.setOut(out)
                .setErr(err)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setExpandAtFiles(false)
                .setExecutionExceptionHandler((failure, command, parsed) -> told(failure, err))
                .setParameterExceptionHandler((fault, args) -> mistyped(fault, err));
    }

    private static int mistyped(ParameterException fault, PrintWriter err) {
        Mistyped.lines(fault).forEach(err::println);
        return Exit.USAGE;
    }

    /** Every failure in words; never a stack trace. */
    private static int told(Exception failure, PrintWriter err) {
        if (failure instanceof Stop stop) {
            err.println(stop.getMessage());
            return stop.exitCode();
        }
        if (failure instanceof ShopFault fault) {
            err.println(fault.getMessage());
            return fault.ofDisk() ? Exit.DISK : Exit.BAD_DATA;
        }
        if (failure instanceof RefusedBuild refused) {
            err.println(refused.getMessage());
            refused.sentences().forEach(err::println);
            return refused.unreadable() ? Exit.BAD_DATA : Exit.NOT_LEGAL;
        }
        if (failure instanceof OurFault) {
            err.println("Withy contradicts itself and shows nothing: " + failure.getMessage() + ".");
        } else {
            err.println("Withy failed: " + failure.getClass().getSimpleName()
                    + (failure.getMessage() == null ? "" : ", " + firstLine(failure.getMessage())) + ".");
        }
        err.println("Maybe send us the brief and the catalogue: this is our fault, not yours.");
        return Exit.OUR_FAULT;
    }

    private static String firstLine(String message) {
        List<String> lines = message.lines().toList();
        return lines.isEmpty() ? "" : lines.get(0);
    }

    public static void main(String[] args) {
        // Answers hold the degree and plus-minus signs whatever the machine's locale says.
        Outlet outlet = new Outlet(new FileOutputStream(FileDescriptor.out));
        PrintWriter out = writer(outlet);
        PrintWriter err = new PrintWriter(new NarrowWriter(writer(System.err)), true);
        Interruption interruption = new Interruption();
        interruption.listen();
        int exitCode = commandLine(out, err, Surroundings.ofMachine(interruption::asked), Commands.of(args))
                .execute(args);
        err.flush();
        boolean unwritten = out.checkError() && !outlet.leftByReader();
        interruption.done();
        System.exit(unwritten ? Exit.DISK : exitCode);
    }

    private static PrintWriter writer(OutputStream stream) {
        return new PrintWriter(stream, true, StandardCharsets.UTF_8);
    }
}
