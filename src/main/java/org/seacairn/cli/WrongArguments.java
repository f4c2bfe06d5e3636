package org.seacairn.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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
                    : first.paramLabel().equals("PLAN")
                    ? "name a siting plan, for example: " + command.getCommandSpec().qualifiedName() + " plan.yaml"
                    : "name a " + first.paramLabel().toLowerCase(Locale.ROOT) + " after the plan, for example: "
                    + command.getCommandSpec().qualifiedName() + " plan.yaml proposal.csv";
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
        if (wanted.isEnum()) {
            return "write " + Stream.of(wanted.getEnumConstants()).map(c -> c.toString().toLowerCase(Locale.ROOT))
                    .collect(Collectors.joining(" or "));
        }
        return wanted == int.class || wanted == long.class ? "give a whole number" : "it takes no value";
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
