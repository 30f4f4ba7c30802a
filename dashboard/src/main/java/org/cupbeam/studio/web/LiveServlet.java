package org.cupbeam.studio.web;

import jakarta.servlet.AsyncContext;
import jakarta.servlet.http.HttpServlet;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;

/**
 * Hands browsers to streams: {@code /live/lanes} is the list of lanes, {@code /live/<studio>/<lane>} one of them. A
 * plain servlet, since only the servlet interface writes without a thread per browser.
 */
final class LiveServlet extends HttpServlet {
    private static final long serialVersionUID = 1L;
    private static final int MOST_VIEWERS = 4_096;

    private final transient LiveLanes lanes;
    private final AtomicInteger viewers = new AtomicInteger();

    LiveServlet(LiveLanes lanes) {
        this.lanes = lanes;
    }

    @Override
    protected void doGet(HttpServletRequest request, HttpServletResponse response) throws IOException {
        Optional<Stream> stream = lanes.stream(request.getPathInfo(), Access.openScope(request));
        if (stream.isEmpty()) {
            response.sendError(HttpServletResponse.SC_NOT_FOUND);
            return;
        }
        if (viewers.incrementAndGet() > MOST_VIEWERS) {
            viewers.decrementAndGet();
            response.setHeader("Retry-After", "10");
            response.sendError(HttpServletResponse.SC_SERVICE_UNAVAILABLE);
            return;
        }
        open(stream.get(), request, response);
    }

    private void open(Stream stream, HttpServletRequest request, HttpServletResponse response) throws IOException {
        response.setContentType("text/event-stream");
        response.setCharacterEncoding("UTF-8");
        response.setHeader("Cache-Control", "no-store");
        response.setHeader("X-Accel-Buffering", "no"); // nginx would hold back what it thinks too little
        AsyncContext exchange = request.startAsync();
        exchange.setTimeout(0);
        AtomicReference<Viewer> self = new AtomicReference<>();
        Viewer viewer = new Viewer(exchange, response.getOutputStream(), () -> {
            viewers.decrementAndGet();
            stream.leave(self.get());
        });
        self.set(viewer);
        exchange.addListener(viewer);
        response.getOutputStream().setWriteListener(viewer);
        stream.join(viewer);
    }
}
