package org.seacairn.cli;

/** The command line. */
public final class Seacairn {
    private Seacairn() {}

    public static void main(String[] args) {}
}
