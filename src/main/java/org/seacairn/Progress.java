package org.seacairn;

/**
 * Is told how far a long computation has come. What is computed does not depend on it. Safe for several threads at
 * once, and cheap enough for every tile or site, not for every cell.
 */
public interface Progress {
    /** Nobody looks. */
    Progress NONE = new Progress() {
        @Override
        public void stage(String name) {}

        @Override
        public void expect(long total, String unit) {}

        @Override
        public void done(long more) {}
    };

    /** A stage of a run begins; whether it will be counted is not known yet. */
    void stage(String name);

    /**
     * Counting begins anew within the stage.
     *
     * @param total of what there is to do, or 0 where that is not known
     * @param unit what is counted, in the plural
     */
    void expect(long total, String unit);

    /** So many more are done. */
    void done(long more);
}
