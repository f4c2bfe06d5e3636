package org.seacairn.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.logging.LogManager;
import org.seacairn.InputException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.Spec;

/** The command line: {@code seacairn COMMAND PLAN …}. */
@Command(name = "seacairn", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = "Ranks and checks sites for artificial-reef modules on the sea floor.",
        subcommands = {RankCommand.class, InfillCommand.class, RingCommand.class, AreasCommand.class, DropCommand.class, ReviewCommand.class, LayersCommand.class},
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:done", "1:done, and the answer is no", "2:the input is at fault", "3:Seacairn is at fault"},
        footerHeading = "%n",
        footer = "A screening aid: not for navigation, no permit. The permitting authority, the coast guard's notice"
                + " and local codes decide.")
public final class Seacairn implements Runnable {
    /** The answer is no: nothing feasible, a failed review, a chain that does not exist. */
    static final int ANSWER_IS_NO = 1;
    static final int INPUT_AT_FAULT = 2;
    static final int SEACAIRN_AT_FAULT = 3;

    @Spec
    private CommandSpec spec;

    /** Runs one command and ends the process with its status. */
    public static void main(String[] args) {
        quietLibraries();
        System.exit(run(new PrintWriter(System.out, true), new PrintWriter(System.err, true), args));
    }

    /** Runs one command and returns its exit status. */
    static int run(PrintWriter out, PrintWriter err, String... args) {
        int status = execute(new CommandLine(new Seacairn())
                .setOut(out)
                .setErr(err)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setParameterExceptionHandler(new WrongArguments())
                .setExecutionExceptionHandler(new FailureHandler()), args);
        if (out.checkError()) {
            err.println("seacairn: what was to be printed could not be (its disk is full, or its reader has gone)");
            return INPUT_AT_FAULT;
        }
        return status;
    }

    /** Whether the process was asked to end, so that what fails now fails for that: its files are taken away under it. */
    private static boolean isEnding() {
        try {
            Thread none = new Thread();
            Runtime.getRuntime().addShutdownHook(none);
            Runtime.getRuntime().removeShutdownHook(none);
            return false;
        } catch (IllegalStateException e) {
            return true;
        }
    }

    private static int execute(CommandLine command, String... args) {
        try {
            return command.execute(args);
        } catch (Error e) {
            // Past every handler, and Java's own status for it is 1, which means "the answer is no" here.
            return FailureHandler.fault(e, command.getErr(), List.of(args).contains("--trace"));
        }
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "name a command: " + commands(spec.commandLine()));
    }

    /** The names of the commands, in the order of the help. */
    static String commands(CommandLine root) {
        return String.join(", ", root.getSubcommands().keySet());
    }

    /** Libraries log and probe for native helpers; standard error is for our own messages. */
    private static void quietLibraries() {
        LogManager.getLogManager().reset();
        System.setProperty("com.sun.media.jai.disableMediaLib", "true");
        System.setProperty("java.awt.headless", "true");
    }

    /** One sentence for each failure; the stack trace only with {@code --trace}. */
    private static final class FailureHandler implements IExecutionExceptionHandler {
        @Override
        public int handleExecutionException(Exception e, CommandLine command, ParseResult parsed) {
            if (isEnding()) {
                return INPUT_AT_FAULT; // Nobody gets to see it.
            }
            boolean trace = command.getCommand() instanceof PlanCommand plan && plan.options.trace;
            if (!(e instanceof InputException input)) {
                return fault(e, command.getErr(), trace);
            }
            if (trace) {
                e.printStackTrace(command.getErr());
            }
            input.problems().forEach(problem -> command.getErr().println("seacairn: " + problem));
            return INPUT_AT_FAULT;
        }

        static int fault(Throwable e, PrintWriter err, boolean trace) {
            if (trace) {
                e.printStackTrace(err);
            }
            if (e instanceof OutOfMemoryError) {
                err.println("seacairn: Java ran out of memory (" + e.getMessage() + "); give it more (java -Xmx4g -jar"
                        + " seacairn.jar, or SEACAIRN_OPTS=-Xmx4g for the launcher), or run with fewer --threads");
            } else {
                err.println("seacairn: this is a fault in Seacairn, not in your input: " + e
                        + (trace ? "" : "; run again with --trace and report what it prints"));
            }
            return SEACAIRN_AT_FAULT;
        }
    }
}
