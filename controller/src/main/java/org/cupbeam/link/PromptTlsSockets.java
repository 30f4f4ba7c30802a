package org.cupbeam.link;

import static org.cupbeam.link.PromptSockets.prompt;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import javax.net.ssl.SSLSocketFactory;

/** The same as {@link PromptSockets}, for TLS. */
final class PromptTlsSockets extends SSLSocketFactory {
    private final SSLSocketFactory tls;

    PromptTlsSockets(SSLSocketFactory tls) {
        this.tls = tls;
    }

    @Override
    public String[] getDefaultCipherSuites() {
        return tls.getDefaultCipherSuites();
    }

    @Override
    public String[] getSupportedCipherSuites() {
        return tls.getSupportedCipherSuites();
    }

    @Override
    public Socket createSocket() throws IOException {
        return prompt(tls.createSocket());
    }

    @Override
    public Socket createSocket(Socket over, String host, int port, boolean closesIt) throws IOException {
        return prompt(tls.createSocket(over, host, port, closesIt));
    }

    @Override
    public Socket createSocket(String host, int port) throws IOException {
        return prompt(tls.createSocket(host, port));
    }

    @Override
    public Socket createSocket(String host, int port, InetAddress from, int fromPort) throws IOException {
        return prompt(tls.createSocket(host, port, from, fromPort));
    }

    @Override
    public Socket createSocket(InetAddress host, int port) throws IOException {
        return prompt(tls.createSocket(host, port));
    }

    @Override
    public Socket createSocket(InetAddress host, int port, InetAddress from, int fromPort) throws IOException {
        return prompt(tls.createSocket(host, port, from, fromPort));
    }
}
