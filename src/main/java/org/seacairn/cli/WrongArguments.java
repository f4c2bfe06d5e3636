package org.seacairn.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says in the words of this program what is wrong with the arguments, and where to look them up. */
final class WrongArguments implements IParameterExceptionHandler {
    @Override
    public int handleParseException(ParameterException e, String[] args) {
        CommandLine command = e.getCommandLine();
        PrintWriter err = command.getErr();
        err.println("seacairn: " + message(e, command));
        err.println("Try: " + command.getCommandSpec().qualifiedName() + " --help");
        return Seacairn.INPUT_AT_FAULT;
    }

    private static String message(ParameterException e, CommandLine command) {
        if (e instanceof UnmatchedArgumentException unmatched) {
            return unmatched(unmatched, command);
        }
        if (e instanceof MissingParameterException missing && !missing.getMissing().isEmpty()) {
            ArgSpec first = missing.getMissing().get(0);
            return first instanceof OptionSpec option ? option.longestName() + " needs a value, " + option.paramLabel()
                    : "name a siting plan, for example: " + command.getCommandSpec().qualifiedName() + " plan.yaml";
        }
        if (e.getArgSpec() != null && e.getValue() != null) {
            return name(e.getArgSpec()) + " is \"" + e.getValue() + "\"; " + remedy(e.getArgSpec().type());
        }
        return e.getMessage();
    }

    private static String remedy(Class<?> wanted) {
        if (wanted == Path.class) {
            return "no file can have that name here; check it, and that the terminal is set to UTF-8";
        }
        return wanted == int.class ? "give a whole number" : "it takes no value";
    }

    private static String unmatched(UnmatchedArgumentException e, CommandLine command) {
        String met = e.getUnmatched().get(0);
        Optional<String> meant = e.getSuggestions().stream().findFirst().map(s -> "; did you mean " + s + "?");
        if (e.isUnknownOption()) {
            return "there is no option " + met
                    + meant.orElse(command.getParent() == null ? "; options of a command come after its name" : "");
        }
        if (command.getParent() == null) {
            return "there is no command \"" + met + "\"" + meant.orElse("; name one of " + Seacairn.commands(command));
        }
        return "\"" + met + "\" is one argument too many; a path with spaces needs quotes";
    }

    private static String name(ArgSpec argument) {
        return argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
    }
}
