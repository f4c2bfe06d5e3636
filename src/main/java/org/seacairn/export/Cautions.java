package org.seacairn.export;

import java.util.List;

/** What every output that a person reads says of itself. */
public final class Cautions {
    /** For a cell of a table. */
    public static final String SHORT = "screening aid, not for navigation, no permit; the permitting authority decides";

    /** For a page. */
    public static final List<String> LINES = List.of(
            "A screening aid: not for navigation, no permit, no survey and no engineering design.",
            "It is as right as the layers and rules that it was given, and says nothing of what they leave out.",
            "Lifting, towing and placement belong to licensed people. The permitting authority, the coast guard's"
                    + " notice and local codes decide.");

    /** For a cell of a table of drops. */
    public static final String DROP_SHORT = "screening figures, not a lifting or mooring plan; stand clear;"
            + " the barge master and a licensed engineer decide";

    /** For a page about sinking, landing and standing, after {@link #LINES}. */
    public static final List<String> DROP_LINES = List.of(
            "Sinking, landing and standing are screening figures, not a lifting or mooring plan.",
            "Stand clear of the module, its gear and the water below it. The barge master and a licensed engineer decide.");

    private Cautions() {}
}
