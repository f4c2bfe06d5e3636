package org.seacairn.cli;

import picocli.CommandLine.IVersionProvider;

/** The version that the jar's manifest states. */
final class Version implements IVersionProvider {
    static String text() {
        String stated = Seacairn.class.getPackage().getImplementationVersion();
        return stated == null ? "development" : stated;
    }

    @Override
    public String[] getVersion() {
        return new String[] {"Seacairn " + text()};
    }
}
