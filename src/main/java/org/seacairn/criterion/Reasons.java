package org.seacairn.criterion;

import java.util.ArrayList;
import java.util.List;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.KeepOff;

/**
 * The reasons that can rule a cell out, and the bit of each in a cell's mask: the first reason has the
 * value 1, the next 2, then 4 and so on. A mask of 0 is a cell that nothing rules out.
 */
public final class Reasons {
    public static final String NO_DEPTH = "no-depth";
    public static final String NO_TERRAIN = "no-terrain";
    public static final String OUTSIDE_AREA = "outside-area";
    public static final String TOO_SHALLOW = "too-shallow";
    public static final String TOO_TALL = "too-tall";
    public static final String TOO_DEEP = "too-deep";
    public static final String TOO_STEEP = "too-steep";
    public static final String TOO_ROUGH = "too-rough";
    public static final String BOTTOM_UNSUITABLE = "bottom-unsuitable";
    public static final String BOTTOM_UNMAPPED = "bottom-unmapped";
    public static final String TOO_SOFT = "too-soft";
    public static final String UNSTABLE = "unstable";
    public static final String NEAR_REEF = "near-reef";
    public static final String LANDING_ROOM = "landing-room";

    private static final List<String> FIXED = List.of(NO_DEPTH, NO_TERRAIN, OUTSIDE_AREA, TOO_SHALLOW, TOO_TALL,
            TOO_DEEP, TOO_STEEP, TOO_ROUGH, BOTTOM_UNSUITABLE, BOTTOM_UNMAPPED);
    private static final int MOST = 32;

    private final List<String> names;

    private Reasons(List<String> names) {
        this.names = List.copyOf(names);
    }

    /** The reasons of a plan: the fixed ones, those of its limits on landing, near-reef, one for each keep-off layer in order, landing room. */
    public static Reasons of(SitingPlan plan) {
        List<String> names = new ArrayList<>(FIXED);
        // Only where a limit asks for them: each takes a bit that a keep-off layer could have.
        plan.limits().embedmentM().ifPresent(limit -> names.add(TOO_SOFT));
        plan.limits().stability().ifPresent(limit -> names.add(UNSTABLE));
        names.add(NEAR_REEF);
        for (KeepOff layer : plan.keepOff()) {
            names.add(keepOff(layer.source().label()));
        }
        names.add(LANDING_ROOM);
        if (names.size() > MOST) {
            throw new IllegalArgumentException(names.size() + " reasons do not fit a mask of " + MOST + " bits");
        }
        return new Reasons(names);
    }

    /** Name of the reason of a keep-off layer. */
    public static String keepOff(String label) {
        return "keep-off:" + label;
    }

    /** In the order of their bits. */
    public List<String> names() {
        return names;
    }

    /** The mask of one reason. */
    public int bit(String name) {
        int i = names.indexOf(name);
        if (i < 0) {
            throw new IllegalArgumentException("no reason " + name);
        }
        return 1 << i;
    }

    /** The names in a mask, joined for people; empty text for 0. */
    public String describe(int mask) {
        List<String> found = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            if ((mask & 1 << i) != 0) {
                found.add(names.get(i));
            }
        }
        return String.join(", ", found);
    }
}
