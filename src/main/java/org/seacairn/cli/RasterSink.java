package org.seacairn.cli;

import org.seacairn.export.OutputFolder;
import org.seacairn.export.TiledGeoTiff;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.ScoreRun;
import org.seacairn.score.ScoredWindow;

/** Writes scored tiles to {@code score.tif} and {@code reasons.tif}. */
final class RasterSink implements ScoreRun.Sink<RasterSink.Encoded>, AutoCloseable {
    private final TiledGeoTiff score;
    private final TiledGeoTiff reasons;

    /** A compressed tile of each raster. */
    record Encoded(byte[] score, byte[] reasons) {}

    RasterSink(OutputFolder output, ScoreEngine engine) {
        int side = ScoreRun.tileSide(engine);
        TiledGeoTiff.Cell mask = engine.reasons().names().size() <= 16 ? TiledGeoTiff.Cell.UINT16 : TiledGeoTiff.Cell.UINT32;
        this.score = new TiledGeoTiff(output.resolve("score.tif"), engine.grid(), side, TiledGeoTiff.Cell.FLOAT32, "nan");
        this.reasons = new TiledGeoTiff(output.resolve("reasons.tif"), engine.grid(), side, mask, null);
    }

    @Override
    public Encoded encode(ScoredWindow tile) {
        int[] bits = new int[tile.score().length];
        for (int i = 0; i < bits.length; i++) {
            bits[i] = Float.floatToIntBits(tile.score()[i]);
        }
        return new Encoded(score.encode(tile.window(), bits), reasons.encode(tile.window(), tile.reasons()));
    }

    @Override
    public void write(Encoded encoded) {
        score.write(encoded.score);
        reasons.write(encoded.reasons);
    }

    void finish() {
        score.finish();
        reasons.finish();
    }

    @Override
    public void close() {
        try (score) {
            reasons.close();
        }
    }
}
