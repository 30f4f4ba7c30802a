package org.cupbeam.link;

import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.BindException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ThreadLocalRandom;

/**
 * As much of an MQTT 3.1.1 broker as is needed to behave badly in ways that no real one would on demand: to answer
 * nothing, to withhold acknowledgements, to send too much at the wrong moment.
 */
final class StubBroker implements AutoCloseable {
    /** What came by PUBLISH. */
    record Published(String topic, byte[] payload) {
    }

    private static final int CONNECT = 1;
    private static final int PUBLISH = 3;
    private static final int PUBACK = 4;
    private static final int SUBSCRIBE = 8;
    private static final int PING = 12;

    final List<Published> published = new CopyOnWriteArrayList<>();
    final List<Integer> acknowledgedByClient = new CopyOnWriteArrayList<>();
    volatile int connects;
    volatile boolean silent;
    volatile boolean acknowledges = true;
    volatile int connectCode;
    volatile int grants = 1;
    volatile List<Published> beforeSubscribed = List.of();

    private final ServerSocket door;
    private final List<Socket> guests = new CopyOnWriteArrayList<>();
    private final List<Integer> owed = new ArrayList<>();
    private volatile OutputStream last;
    private int packetIds;

    StubBroker(int port) throws IOException {
        door = new ServerSocket(port, 50, InetAddress.getLoopbackAddress());
        start("stub-broker", this::letIn);
    }

    /** Below those that the system gives to outgoing connections, so that none takes it while nobody listens. */
    static int freePort() throws IOException {
        for (int i = 0; i < 100; i++) {
            int port = ThreadLocalRandom.current().nextInt(20_000, 32_000);
            try (ServerSocket any = new ServerSocket(port, 1, InetAddress.getLoopbackAddress())) {
                return any.getLocalPort();
            } catch (BindException e) {
                // somebody's
            }
        }
        throw new IOException("no free port from 20000 to 32000");
    }

    String uri() {
        return "tcp://127.0.0.1:" + door.getLocalPort();
    }

    /** Sends a message at QoS 1 to the client that came last. */
    void send(Published message) throws IOException {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        DataOutputStream to = new DataOutputStream(body);
        to.writeUTF(message.topic());
        to.writeShort(++packetIds);
        to.write(message.payload());
        write(PUBLISH << 4 | 2, body.toByteArray());
    }

    /** Acknowledges all that was withheld, and withholds no more. */
    synchronized void acknowledgeAll() throws IOException {
        acknowledges = true;
        for (int id : owed) {
            write(PUBACK << 4, new byte[] {(byte) (id >> 8), (byte) id});
        }
        owed.clear();
    }

    /** What was published on topics with this ending. */
    List<String> texts(String ending) {
        return published.stream().filter(each -> each.topic().endsWith(ending))
                .map(each -> new String(each.payload(), StandardCharsets.UTF_8)).toList();
    }

    private static void start(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
    }

    private void letIn() {
        try {
            while (!door.isClosed()) {
                Socket guest = door.accept();
                guests.add(guest);
                start("stub-guest", () -> serve(guest));
            }
        } catch (IOException e) {
            // closed
        }
    }

    private void serve(Socket guest) {
        try (guest) {
            DataInputStream from = new DataInputStream(guest.getInputStream());
            while (true) {
                int first = from.readUnsignedByte();
                byte[] body = from.readNBytes(length(from));
                if (first >> 4 == CONNECT) {
                    last = guest.getOutputStream();
                    connects++;
                }
                if (!silent) {
                    answer(first >> 4, body);
                }
            }
        } catch (IOException e) {
            // gone
        }
    }

    private static int length(DataInputStream from) throws IOException {
        int length = 0;
        for (int shift = 0, digit = 0x80; (digit & 0x80) != 0; shift += 7) {
            digit = from.readUnsignedByte();
            length |= (digit & 0x7f) << shift;
        }
        return length;
    }

    private synchronized void answer(int type, byte[] body) throws IOException {
        switch (type) {
            case CONNECT -> write(2 << 4, new byte[] {0, (byte) connectCode});
            case PUBLISH -> published(body);
            case PUBACK -> acknowledgedByClient.add((body[0] & 0xff) << 8 | body[1] & 0xff);
            case SUBSCRIBE -> {
                for (Published each : beforeSubscribed) {
                    send(each);
                }
                byte granted = (byte) grants;
                write(9 << 4, new byte[] {body[0], body[1], granted, granted, granted});
            }
            case PING -> write(13 << 4, new byte[0]);
            default -> {
                // a goodbye needs no answer
            }
        }
    }

    private void published(byte[] body) throws IOException {
        int topicLength = (body[0] & 0xff) << 8 | body[1] & 0xff;
        String topic = new String(body, 2, topicLength, StandardCharsets.UTF_8);
        int at = 2 + topicLength;
        int id = (body[at] & 0xff) << 8 | body[at + 1] & 0xff;
        byte[] payload = Arrays.copyOfRange(body, at + 2, body.length);
        published.add(new Published(topic, payload));
        owed.add(id);
        if (acknowledges) {
            acknowledgeAll();
        }
    }

    private void write(int first, byte[] body) throws IOException {
        ByteArrayOutputStream packet = new ByteArrayOutputStream();
        packet.write(first);
        int rest = body.length;
        do {
            packet.write(rest > 127 ? rest & 0x7f | 0x80 : rest);
            rest >>= 7;
        } while (rest > 0);
        packet.write(body);
        synchronized (this) {
            last.write(packet.toByteArray());
            last.flush();
        }
    }

    @Override
    public void close() throws IOException {
        door.close();
        for (Socket each : guests) {
            each.close();
        }
    }
}
