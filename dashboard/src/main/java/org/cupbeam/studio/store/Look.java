package org.cupbeam.studio.store;

import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Consumer;

/** A look through a whole store for damage, which may take longer than anybody wants to wait for the first page. */
final class Look {
    private final CompletableFuture<Void> found;

    private Look(CompletableFuture<Void> found) {
        this.found = found;
    }

    /** One that is over, and found nothing. */
    static Look over() {
        return new Look(CompletableFuture.completedFuture(null));
    }

    /** Looks on a thread of its own. @param check throws what it finds */
    static Look beside(Runnable check) {
        return new Look(CompletableFuture.runAsync(check, task -> {
            Thread thread = new Thread(task, "store-look");
            thread.setDaemon(true);
            thread.start();
        }));
    }

    boolean isOver() {
        return found.isDone();
    }

    /**
     * Waits for its end.
     *
     * @throws StoreTrouble what was found
     */
    void await() {
        try {
            found.join();
        } catch (CompletionException | CancellationException e) {
            throw trouble(e);
        }
    }

    /** Has something done when nothing was found. */
    void whenWhole(Runnable next) {
        found.thenRun(next);
    }

    /** Tells what was found, on its thread, or at once where that is known already. */
    void whenDamaged(Consumer<StoreTrouble> tell) {
        found.exceptionally(e -> {
            tell.accept(trouble(e));
            return null;
        });
    }

    private static StoreTrouble trouble(Throwable e) {
        Throwable cause = e instanceof CompletionException ? e.getCause() : e;
        return cause instanceof StoreTrouble ? (StoreTrouble) cause
                : new StoreTrouble("the store could not be looked through for damage (" + cause + "); start again", cause);
    }
}
