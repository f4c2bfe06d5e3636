package org.seacairn.cli;

import java.io.PrintWriter;
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
        subcommands = {RankCommand.class, LayersCommand.class},
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
        return new CommandLine(new Seacairn())
                .setOut(out)
                .setErr(err)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setParameterExceptionHandler(new WrongArguments())
                .setExecutionExceptionHandler(new FailureHandler())
                .execute(args);
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
            PrintWriter err = command.getErr();
            boolean trace = command.getCommand() instanceof PlanCommand plan && plan.options.trace;
            if (trace) {
                e.printStackTrace(err);
            }
            if (e instanceof InputException input) {
                input.problems().forEach(problem -> err.println("seacairn: " + problem));
                return INPUT_AT_FAULT;
            }
            err.println("seacairn: this is a fault in Seacairn, not in your input: " + e
                    + (trace ? "" : "; run again with --trace and report what it prints"));
            return SEACAIRN_AT_FAULT;
        }
    }
}
