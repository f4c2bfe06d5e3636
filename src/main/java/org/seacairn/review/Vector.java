package org.seacairn.review;

import net.sf.geographiclib.Geodesic;

/** A place in space, in metres from the centre of the Earth: x towards 0 E on the equator, y towards 90 E, z north. */
record Vector(double x, double y, double z) {

    /** The place on the ellipsoid at a longitude and latitude in degrees. */
    static Vector of(double longitudeDeg, double latitudeDeg, Geodesic geodesic) {
        double phi = Math.toRadians(latitudeDeg);
        double lambda = Math.toRadians(longitudeDeg);
        double f = geodesic.Flattening();
        double polarShare = (1 - f) * (1 - f);
        double sin = Math.sin(phi);
        double cos = Math.cos(phi);
        double normalM = geodesic.EquatorialRadius() / Math.sqrt(cos * cos + polarShare * sin * sin);
        return new Vector(normalM * cos * Math.cos(lambda), normalM * cos * Math.sin(lambda), normalM * polarShare * sin);
    }

    Vector plus(Vector other) {
        return new Vector(x + other.x, y + other.y, z + other.z);
    }

    Vector minus(Vector other) {
        return new Vector(x - other.x, y - other.y, z - other.z);
    }

    Vector times(double factor) {
        return new Vector(x * factor, y * factor, z * factor);
    }

    double dot(Vector other) {
        return x * other.x + y * other.y + z * other.z;
    }

    double length() {
        return Math.sqrt(dot(this));
    }
}
