package org.cupbeam.journal;

/**
 * How the play's inputs are written down.
 *
 * @param <I> the play's inputs
 */
public interface InputCodec<I> {
    String encode(I input);

    /** @throws IllegalArgumentException for what {@link #encode} never made, with what is wrong with it */
    I decode(String text);
}
