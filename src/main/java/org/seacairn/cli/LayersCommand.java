package org.seacairn.cli;

import picocli.CommandLine.Command;

/** {@code seacairn layers PLAN}: what each layer holds, and what is wrong with it. */
@Command(name = "layers", description = "Tells what each layer of a plan holds, and what is wrong with it.")
final class LayersCommand extends PlanCommand {
    @Override
    public Integer call() {
        return 0;
    }
}
