package org.seacairn.place;

/**
 * A cell that a module of a ring stands on, or could.
 *
 * @param bearingDeg true bearing from the stone's centre, 0 (north) up to but not 360, clockwise
 * @param distanceM on the ground to the nearest point of the stone
 */
public record RingModule(Pick pick, double bearingDeg, double distanceM) {}
