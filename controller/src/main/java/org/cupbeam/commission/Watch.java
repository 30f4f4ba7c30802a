package org.cupbeam.commission;

/** What a step makes of edges. It says what it has to say to whoever it was made with. */
interface Watch {
    /** A step for which edges mean nothing. */
    Watch NONE = new Watch() {
        @Override
        public void edge(int line, boolean high, long timeNs) {
        }

        @Override
        public void settled(long timeNs) {
        }
    };

    void edge(int line, boolean high, long timeNs);

    /** No edge earlier than this comes any more. */
    void settled(long timeNs);
}
