package org.seacairn.report;

import java.util.List;

/** What was not checked, or is taken on trust. */
record TrustSection(List<String> unchecked) implements Section {
    @Override
    public String id() {
        return "trust";
    }

    @Override
    public String heading() {
        return "Not checked, or taken on trust";
    }

    @Override
    public void write(Html html) {
        WarningsSection.list(html, unchecked);
    }
}
