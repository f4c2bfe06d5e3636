package org.seacairn.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What every command that reads a siting plan takes. */
final class PlanOptions {
    @Parameters(index = "0", paramLabel = "PLAN", description = "The siting plan, a YAML file.")
    Path plan;

    @Option(names = "--allow-outside", description = "Let the plan name files outside its own folder.")
    boolean allowOutside;

    @Option(names = "--json", description = "Print the summary as JSON, for programs.")
    boolean json;

    @Option(names = "--quiet", description = "Print nothing but errors.")
    boolean quiet;

    @Option(names = "--trace", description = "Print the stack trace of a failure too.")
    boolean trace;

    @Option(names = {"-h", "--help"}, usageHelp = true, description = "Show this help.")
    boolean help;
}
