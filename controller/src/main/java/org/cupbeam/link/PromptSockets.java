package org.cupbeam.link;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import javax.net.SocketFactory;

/**
 * Sockets that send what they are given at once. Paho leaves Nagle's algorithm on: a message then waits until the broker's
 * system has acknowledged the one before, which that puts off by up to 40 ms where the broker has nothing to answer.
 */
public final class PromptSockets extends SocketFactory {
    private final SocketFactory plain = SocketFactory.getDefault();

    /** The same socket, which does not wait for more to send from now on. */
    static Socket prompt(Socket socket) throws IOException {
        socket.setTcpNoDelay(true);
        return socket;
    }

    @Override
    public Socket createSocket() throws IOException {
        return prompt(plain.createSocket());
    }

    @Override
    public Socket createSocket(String host, int port) throws IOException {
        return prompt(plain.createSocket(host, port));
    }

    @Override
    public Socket createSocket(String host, int port, InetAddress from, int fromPort) throws IOException {
        return prompt(plain.createSocket(host, port, from, fromPort));
    }

    @Override
    public Socket createSocket(InetAddress host, int port) throws IOException {
        return prompt(plain.createSocket(host, port));
    }

    @Override
    public Socket createSocket(InetAddress host, int port, InetAddress from, int fromPort) throws IOException {
        return prompt(plain.createSocket(host, port, from, fromPort));
    }
}
