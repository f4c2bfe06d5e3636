package org.seacairn.report;

/** A part of a page under a heading of its own. */
public interface Section {
    /** Names it within the page: lower case letters and hyphens. */
    String id();

    String heading();

    /** Writes what stands below the heading; further headings begin at {@code h3}. */
    void write(Html html);
}
