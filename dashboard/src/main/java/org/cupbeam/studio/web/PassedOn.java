package org.cupbeam.studio.web;

import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import java.io.IOException;
import java.util.Enumeration;
import java.util.concurrent.atomic.AtomicBoolean;
import org.cupbeam.studio.web.access.Proxies;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Sees to it that whatever comes after knows the one who asks and not the proxy that passes it on: whose address it is,
 * and whether the way there is by TLS. Comes first of all filters.
 */
final class PassedOn implements Filter {
    private static final Logger LOG = LoggerFactory.getLogger(PassedOn.class);
    private static final String FOR = "X-Forwarded-For";
    private static final String PROTO = "X-Forwarded-Proto";

    private final Proxies proxies;
    private final AtomicBoolean told = new AtomicBoolean();

    PassedOn(Proxies proxies) {
        this.proxies = proxies;
    }

    @Override
    public void doFilter(ServletRequest anyRequest, ServletResponse response, FilterChain next)
            throws IOException, ServletException {
        HttpServletRequest request = (HttpServletRequest) anyRequest;
        String forwarded = last(request.getHeaders(FOR));
        if (!proxies.include(request.getRemoteAddr())) {
            if (forwarded != null && !told.getAndSet(true)) {
                LOG.warn("{} passes requests on for others and is not believed; if it is your proxy, start with "
                        + "--proxy {}", request.getRemoteAddr(), request.getRemoteAddr());
            }
            next.doFilter(request, response);
            return;
        }
        String caller = Proxies.caller(forwarded).orElse(request.getRemoteAddr());
        next.doFilter(new Asked(request, caller, "https".equals(last(request.getHeaders(PROTO)))), response);
    }

    private static String last(Enumeration<String> values) {
        String last = null;
        while (values.hasMoreElements()) {
            last = values.nextElement();
        }
        return last;
    }

    /** The request as the proxy had it. */
    private static final class Asked extends HttpServletRequestWrapper {
        private final String caller;
        private final boolean secure;

        Asked(HttpServletRequest request, String caller, boolean secure) {
            super(request);
            this.caller = caller;
            this.secure = secure;
        }

        @Override
        public String getRemoteAddr() {
            return caller;
        }

        @Override
        public boolean isSecure() {
            return secure;
        }

        @Override
        public String getScheme() {
            return secure ? "https" : "http";
        }
    }
}
