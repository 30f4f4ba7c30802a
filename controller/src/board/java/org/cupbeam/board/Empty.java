package org.cupbeam.board;

/** A program that does nothing: what Java's own start takes. */
final class Empty {
    private Empty() {
    }

    public static void main(String[] args) {
    }
}
