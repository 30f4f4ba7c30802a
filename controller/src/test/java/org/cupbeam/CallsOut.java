package org.cupbeam;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Proxy;
import java.net.ProxySelector;
import java.net.SocketAddress;
import java.net.URI;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** Listens for anything in this process that would call out by HTTP, and leads it nowhere. */
public final class CallsOut extends ProxySelector implements AutoCloseable {
    private static final Proxy NOWHERE = new Proxy(Proxy.Type.HTTP, new InetSocketAddress("127.0.0.1", 9));

    private final ProxySelector before = ProxySelector.getDefault();
    private final List<URI> heard = new CopyOnWriteArrayList<>();

    public CallsOut() {
        ProxySelector.setDefault(this);
    }

    /** Whom somebody tried to call. */
    public List<URI> heard() {
        return heard;
    }

    @Override
    public List<Proxy> select(URI uri) {
        heard.add(uri);
        return List.of(NOWHERE);
    }

    @Override
    public void connectFailed(URI uri, SocketAddress address, IOException e) {
        // nowhere
    }

    @Override
    public void close() {
        ProxySelector.setDefault(before);
    }
}
