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

    private Cautions() {}
}
