package org.cupbeam.studio.web;

import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;

/** What every answer tells the browser to be strict about. */
final class Headers implements Filter {
    static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
            + "connect-src 'self'; font-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'self'; "
            + "frame-ancestors 'none'";
    /** A year, RFC 6797: a browser that was here by TLS once comes no other way. */
    private static final String TLS_ALONE = "max-age=31536000";

    @Override
    public void doFilter(ServletRequest request, ServletResponse response, FilterChain next)
            throws IOException, ServletException {
        HttpServletResponse answer = (HttpServletResponse) response;
        answer.setHeader("Content-Security-Policy", POLICY);
        answer.setHeader("X-Content-Type-Options", "nosniff");
        answer.setHeader("Referrer-Policy", "no-referrer");
        answer.setHeader("Cross-Origin-Opener-Policy", "same-origin");
        answer.setHeader("Cross-Origin-Resource-Policy", "same-origin");
        answer.setHeader("Permissions-Policy", "camera=(), microphone=(), geolocation=()");
        if (request.isSecure()) {
            answer.setHeader("Strict-Transport-Security", TLS_ALONE);
        }
        next.doFilter(request, response);
    }
}
