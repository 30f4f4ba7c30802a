package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import javax.net.SocketFactory;
import javax.net.ssl.SSLSocketFactory;
import org.junit.jupiter.api.Test;

/** A message is not held back until the one before is acknowledged. */
class PromptSocketsTest {

    @Test
    void aPlainSocketSendsAtOnce() throws Exception {
        assertThatEachSendsAtOnce(new PromptSockets());
    }

    @Test
    void aTlsSocketSendsAtOnce() throws Exception {
        assertThatEachSendsAtOnce(new PromptTlsSockets((SSLSocketFactory) SSLSocketFactory.getDefault()));
    }

    /** Paho makes its sockets unconnected; others make them connected. */
    private static void assertThatEachSendsAtOnce(SocketFactory sockets) throws Exception {
        InetAddress here = InetAddress.getLoopbackAddress();
        try (ServerSocket server = new ServerSocket(0, 5, here);
             Socket open = sockets.createSocket();
             Socket toName = sockets.createSocket(here.getHostAddress(), server.getLocalPort());
             Socket toAddress = sockets.createSocket(here, server.getLocalPort())) {
            open.connect(server.getLocalSocketAddress());

            assertThat(open.getTcpNoDelay()).isTrue();
            assertThat(toName.getTcpNoDelay()).isTrue();
            assertThat(toAddress.getTcpNoDelay()).isTrue();
        }
    }
}
