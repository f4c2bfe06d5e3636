package org.seacairn.plan;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.Bathymetry;
import org.seacairn.plan.SitingPlan.Bottom;
import org.seacairn.plan.SitingPlan.Combination;
import org.seacairn.plan.SitingPlan.Current;
import org.seacairn.plan.SitingPlan.DepthAreas;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.plan.SitingPlan.KeepOff;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.plan.SitingPlan.Limits;
import org.seacairn.plan.SitingPlan.ReefModule;
import org.seacairn.plan.SitingPlan.Reefs;
import org.seacairn.plan.SitingPlan.Sites;

/** Reads a siting plan and the module and current files that it names. Layers are not opened. */
public final class PlanReader {
    private static final String[] KEYS = {"title", "display", "crs", "cell", "bathymetry", "bottom", "reefs", "inside",
        "depth-areas", "keep-off", "limits", "module", "current", "barge", "terrain", "criteria", "pairwise", "combine", "sites"};

    private static final int USUAL_COUNT = 25;
    private static final int MOST_SITES = 10_000;

    private static final int USUAL_WINDOW_CELLS = 3;
    /** Wider windows smooth away what they are to find, and every tile would have to carry their rim. */
    private static final int WIDEST_WINDOW_CELLS = 99;

    private final Block block;
    private final Path file;
    private final PlanFolder folder;
    private final Findings findings;

    private PlanReader(Block block, Path file, PlanFolder folder, Findings findings) {
        this.block = block;
        this.file = file;
        this.folder = folder;
        this.findings = findings;
    }

    /**
     * Reads a plan.
     *
     * @param allowOutside whether the files that the plan names may lie outside the plan's folder
     * @throws InputException with every problem of the plan, {@code plan.yaml, line N: ...} in the order
     *     of the lines, those of the module and current files after them; of more than 100
     *     problems only the first 100 are shown
     */
    public static SitingPlan read(Path planFile, boolean allowOutside) {
        Path file = planFile.toAbsolutePath().normalize();
        if (file.getFileName() == null) {
            throw new InputException(planFile + ": this is the root of a file system; name a file");
        }
        Findings findings = new Findings();
        Optional<Block> block = YamlText.read(file, "the plan", findings)
                .flatMap(root -> root.block("the plan", KEYS));
        if (block.isEmpty()) {
            findings.throwProblems();
        }
        try {
            PlanFolder folder = new PlanFolder(file, allowOutside);
            return new PlanReader(block.orElseThrow(), file, folder, findings).plan();
        } catch (IOException e) {
            throw new InputException(file.getFileName() + ": the plan's folder cannot be read ("
                    + e.getClass().getSimpleName() + "); check its permissions", e);
        }
    }

    private SitingPlan plan() {
        String title = block.text("title").orElse(file.getFileName().toString().replaceFirst("\\.[^.]*$", ""));
        Display display = block.get("display").flatMap(value -> value.choice(Display.class)).orElse(Display.METRIC);
        Optional<String> crs = workingCrs();
        OptionalDouble cellM = block.get("cell").map(value -> OptionalDouble.of(value.positive(Kind.LENGTH)))
                .orElse(OptionalDouble.empty());
        Optional<Bathymetry> bathymetry = BathymetryBlock.read(block, folder);
        Optional<Bottom> bottom = BottomBlock.read(block, folder);
        Optional<Reefs> reefs = KeepOffBlock.reefs(block, folder);
        Optional<LayerFile> inside = block.get("inside").flatMap(value -> value.block("inside", LayerBlock.keys(LayerBlock.CLASS, LayerBlock.EDGES, LayerBlock.REPAIR)))
                .map(layer -> LayerBlock.read(layer, "inside", "permit-areas.geojson", folder));
        Optional<DepthAreas> depthAreas = DepthAreasBlock.read(block, folder);
        Limits limits = LimitsBlock.read(block);
        List<KeepOff> keepOff = KeepOffBlock.read(block, limits, folder);
        Optional<ReefModule> module = ModuleBlock.read(block, folder);
        Optional<Current> current = CurrentBlock.read(block, folder);
        double bargeUncertaintyM = block.get("barge").flatMap(value -> value.block("barge", "position-uncertainty"))
                .map(barge -> barge.needQuantity("position-uncertainty", Kind.LENGTH, "position-uncertainty: 5 m")).orElse(0.0);
        module.ifPresent(m -> SinkingNeeds.check(block, limits, m, current));
        int window = ruggednessWindowCells();
        CriteriaBlock.Criteria criteria = CriteriaBlock.read(block);
        Combination combine = block.get("combine").flatMap(value -> value.choice(Combination.class))
                .orElse(Combination.WEIGHTED_MEAN);
        Optional<Sites> sites = sites();
        findings.throwProblems();
        SitingPlan plan = new SitingPlan(file, title, display, crs, cellM, bathymetry.orElseThrow(), bottom, reefs,
                inside, depthAreas, keepOff, limits, module.orElseThrow(), current, bargeUncertaintyM, window, criteria.list(), criteria.pairwise(),
                combine, sites.orElseThrow(), List.of());
        return withWarnings(plan);
    }

    private SitingPlan withWarnings(SitingPlan p) {
        List<String> warnings = new ArrayList<>(findings.warnings());
        warnings.addAll(CrossChecks.warnings(p));
        return new SitingPlan(p.file(), p.title(), p.display(), p.crs(), p.cellM(), p.bathymetry(), p.bottom(), p.reefs(),
                p.inside(), p.depthAreas(), p.keepOff(), p.limits(), p.module(), p.current(), p.bargeUncertaintyM(), p.ruggednessWindowCells(), p.criteria(),
                p.pairwise(), p.combine(), p.sites(), List.copyOf(warnings));
    }

    /** Slopes and distances are measured in it, so it must be projected and in metres. */
    private Optional<String> workingCrs() {
        Optional<Value> value = block.get("crs");
        Optional<String> text = value.map(Value::text).filter(t -> !t.isEmpty());
        Optional<Crs> crs = text.flatMap(t -> LayerBlock.parse(value.get(), t));
        if (crs.isPresent() && !crs.get().isMetric()) {
            value.get().problem("crs is " + Shown.quoted(text.get()) + ", which is not projected in metres;"
                    + " write one that is, such as EPSG:32617, or leave it out for the UTM zone");
        }
        return text;
    }

    private int ruggednessWindowCells() {
        Optional<Value> value = block.get("terrain").flatMap(terrain -> terrain.block("terrain", "ruggedness-window"))
                .flatMap(terrain -> terrain.get("ruggedness-window"));
        if (value.isEmpty()) {
            return USUAL_WINDOW_CELLS;
        }
        double cells = value.get().quantity(Kind.CELLS);
        if (!Double.isNaN(cells) && !(cells >= 3 && cells <= WIDEST_WINDOW_CELLS && cells % 2 == 1)) {
            value.get().problem("ruggedness-window is " + Shown.quoted(value.get().text())
                    + "; write an odd number from 3 to " + WIDEST_WINDOW_CELLS + ", for example \"3 cells\"");
        }
        return (int) cells;
    }

    private Optional<Sites> sites() {
        return block.need("sites", "sites: {count: 25, apart: 150 m}")
                .flatMap(value -> value.block("sites", "count", "apart"))
                .map(sites -> new Sites(
                        sites.get("count").map(value -> value.whole(1, MOST_SITES)).orElse(USUAL_COUNT),
                        sites.needPositive("apart", Kind.LENGTH, "apart: 150 m")));
    }
}
