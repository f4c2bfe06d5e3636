package org.seacairn.report;

/** A sheet to print on, upright. */
enum Paper {
    A4(210 / 25.4, 297 / 25.4),
    LETTER(8.5, 11);

    private final double widthInch;
    private final double heightInch;

    Paper(double widthInch, double heightInch) {
        this.widthInch = widthInch;
        this.heightInch = heightInch;
    }

    double widthInch() {
        return widthInch;
    }

    double heightInch() {
        return heightInch;
    }
}
