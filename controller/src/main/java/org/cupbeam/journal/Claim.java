package org.cupbeam.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** The right to be the only one with a journal: a lock on a file beside it, gone with the process however it ends. */
final class Claim implements AutoCloseable {
    /** Held by this process: opening and closing the file a second time would drop the system's lock. */
    private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

    private final Path beside;
    private final FileChannel channel;

    private Claim(Path beside, FileChannel channel) {
        this.beside = beside;
        this.channel = channel;
    }

    static Claim on(Path journal) throws JournalException {
        try {
            Path folder = Files.createDirectories(journal.toAbsolutePath().getParent()).toRealPath();
            Path beside = folder.resolve(journal.getFileName() + ".lock");
            if (!HELD.add(beside)) {
                throw inUse(journal, Long.toString(ProcessHandle.current().pid()));
            }
            FileChannel channel = null;
            try {
                channel = FileChannel.open(beside,
                        StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
                if (channel.tryLock() == null) {
                    throw inUse(journal, holder(channel));
                }
                channel.truncate(0).write(ByteBuffer.wrap(
                        Long.toString(ProcessHandle.current().pid()).getBytes(StandardCharsets.US_ASCII)));
                return new Claim(beside, channel);
            } catch (IOException | JournalException e) {
                HELD.remove(beside);
                if (channel != null) {
                    channel.close();
                }
                throw e;
            }
        } catch (IOException e) {
            throw new JournalException(JournalException.Kind.READ_ONLY, journal + ": its folder cannot be written (" + e
                    + "); name a folder that this user may write, on a disk with room", e);
        }
    }

    private static JournalException inUse(Path journal, String process) {
        return new JournalException(JournalException.Kind.IN_USE, journal + ": is in use by process " + process
                + "; stop that, or give this lane a folder of its own", null);
    }

    private static String holder(FileChannel channel) throws IOException {
        ByteBuffer pid = ByteBuffer.allocate(20);
        channel.read(pid, 0);
        return pid.position() == 0 ? "unknown" : new String(pid.array(), 0, pid.position(), StandardCharsets.US_ASCII);
    }

    @Override
    public void close() throws IOException {
        HELD.remove(beside);
        channel.close();
    }
}
