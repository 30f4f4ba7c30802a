package org.cupbeam.studio;

import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.util.Arrays;

/** Asks whoever sits at the terminal for a PIN or a secret, which is not shown; without a terminal, takes a line of standard input. */
final class NewSecret {
    private NewSecret() {
    }

    /** @throws IllegalArgumentException where nothing comes, or not the same twice */
    static String ask(String what) throws IOException {
        Console console = System.console();
        if (console == null) {
            String line = new BufferedReader(new InputStreamReader(System.in)).readLine();
            if (line == null) {
                throw new IllegalArgumentException("A " + what + " is needed: write it on standard input.");
            }
            return line;
        }
        char[] once = console.readPassword("New " + what + " (not shown): ");
        char[] again = console.readPassword("The same again: ");
        if (once == null || !Arrays.equals(once, again)) {
            throw new IllegalArgumentException("The two were not the same. Nothing was changed.");
        }
        return new String(once);
    }
}
