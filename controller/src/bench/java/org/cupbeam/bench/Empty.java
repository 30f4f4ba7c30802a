package org.cupbeam.bench;

/** A program that does nothing but say that it is there. */
public final class Empty {
    private Empty() {
    }

    /** @param args none */
    public static void main(String[] args) {
        System.err.println("the empty program is ready");
    }
}
