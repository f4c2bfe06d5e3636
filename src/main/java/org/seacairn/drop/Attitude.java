package org.seacairn.drop;
public final class Attitude { static Attitude of(SinkingBody b, Flow f, double t, double d) { return new Attitude(); } public double worstTiltDegNear(double d) { return 2; } }
