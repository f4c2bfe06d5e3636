package org.seacairn.criterion;

import java.util.Arrays;
import org.seacairn.drop.ByDepth;
import org.seacairn.drop.ModuleDrop;
import org.seacairn.plan.SitingPlan.Bottom;

/**
 * Rules out cells into whose bottom the module would sink deeper than allowed, by the class of the bottom and the depth.
 * A class without a strength, and ground in no polygon, is not judged. It scores nothing.
 */
public final class EmbedmentRule implements Rule {
    private final BottomCriterion bottom;
    private final double mostM;
    private final ByDepth[] embedmentM;
    private final int tooSoft;

    /** @param mostM embedment allowed */
    public EmbedmentRule(BottomCriterion bottom, Bottom classes, double mostM, ModuleDrop drop, Reasons reasons) {
        this.bottom = bottom;
        this.mostM = mostM;
        this.embedmentM = classes.classes().stream()
                .map(c -> c.shearStrengthPa().isPresent() ? drop.embedmentM(c) : null).toArray(ByDepth[]::new);
        this.tooSoft = reasons.bit(Reasons.TOO_SOFT);
    }

    @Override
    public void rule(Tile tile, int[] reasons) {
        if (Arrays.stream(embedmentM).allMatch(e -> e == null)) {
            return;
        }
        float[] classes = bottom.classes(tile);
        float[] depth = tile.depth();
        for (int i = 0; i < reasons.length; i++) {
            int c = (int) classes[i];
            if (c >= 0 && embedmentM[c] != null && embedmentM[c].at(depth[i]) > mostM) {
                reasons[i] |= tooSoft;
            }
        }
    }
}
