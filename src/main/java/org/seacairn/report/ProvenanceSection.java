package org.seacairn.report;

import org.seacairn.export.Run;
import org.seacairn.plan.Shown;

/** Where the page comes from: enough to make it again. */
record ProvenanceSection(Run run) implements Section {
    @Override
    public String id() {
        return "provenance";
    }

    @Override
    public String heading() {
        return "Where this comes from";
    }

    @Override
    public void write(Html html) {
        Facts facts = new Facts(html)
                .add("Program", "Seacairn " + run.version())
                .name("Command", run.command())
                .name("Plan", run.plan().file().getFileName().toString());
        // A drop without a target opens no grid.
        if (run.grid() != null) {
            facts.name("Working CRS", run.crs().label())
                    .add("Working grid", run.grid().cols() + " x " + run.grid().rows() + " cells of " + Shown.metres(run.grid().cellM()))
                    .add("Largest error of the map's scale", Shown.number(100 * run.largestScaleError()) + " %");
        }
        facts.end();
        new PageTable<Run.InputFile>("Input files")
                .name("File", Run.InputFile::file)
                .figure("Bytes", input -> Long.toString(input.bytes()))
                .cell("SHA-256", (h, input) -> h.element("code", input.sha256()))
                .write(html, run.inputs());
        html.element("p", "The same inputs give the same page, byte for byte. run.json beside this page has the plan as it was understood.",
                "class", "note").newLine();
    }
}
