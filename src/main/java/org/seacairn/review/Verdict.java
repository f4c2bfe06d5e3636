package org.seacairn.review;

/** What one rule says of one site; the later, the worse for a site as a whole. */
public enum Verdict {
    PASS("pass"),
    /** Passes, but not with the uncertainty allowance. */
    MARGINAL("marginal"),
    /** Cannot be told: never a silent pass. */
    NO_DATA("no data"),
    FAIL("fail");

    private final String text;

    Verdict(String text) {
        this.text = text;
    }

    /** As in the outputs. */
    @Override
    public String toString() {
        return text;
    }
}
