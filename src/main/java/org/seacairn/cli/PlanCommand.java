package org.seacairn.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** A command on a siting plan; returns the exit status. */
abstract class PlanCommand implements Callable<Integer> {
    @Mixin
    final PlanOptions options = new PlanOptions();

    @Spec
    CommandSpec spec;

    PrintWriter out() {
        return spec.commandLine().getOut();
    }

    PrintWriter err() {
        return spec.commandLine().getErr();
    }
}
