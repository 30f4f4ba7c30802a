package org.cupbeam.studio.web;

import jakarta.servlet.http.HttpServletRequest;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** What a request tells of where it comes from. */
final class Caller {
    private static final Set<String> NAMES_OF_HERE = Set.of("localhost", "127.0.0.1", "[::1]");
    private static final Set<String> DATA = Set.of("application/json", "text/csv");
    private static final List<String> PASSED_ON = List.of("Forwarded", "X-Forwarded-For", "X-Real-IP", "Via");

    private Caller() {
    }

    /**
     * Whether somebody at this machine asks: not passed on by a proxy, and under this machine's own name, since a page
     * from elsewhere can have a name of its own point here.
     */
    static boolean sitsHere(HttpServletRequest request) {
        return isLoopback(request.getRemoteAddr())
                && PASSED_ON.stream().allMatch(header -> request.getHeader(header) == null)
                && NAMES_OF_HERE.contains(request.getServerName().toLowerCase(Locale.ROOT));
    }

    /**
     * Whether a page of this host asks, as far as the browser tells. All browsers of today send Sec-Fetch-Site where the
     * connection is trusted (W3C, "Fetch Metadata Request Headers") and Origin with whatever may change something (WHATWG
     * Fetch); a program that is no browser sends neither, and needs the token all the same.
     */
    static boolean isOurPage(HttpServletRequest request) {
        String site = request.getHeader("Sec-Fetch-Site");
        String origin = request.getHeader("Origin");
        String host = request.getHeader("Host");
        boolean sameSite = site == null || site.equals("same-origin") || site.equals("none");
        return sameSite && (origin == null || host != null && (origin.equals("https://" + host)
                || !request.isSecure() && origin.equals("http://" + host)));
    }

    /** Whether what is sent, if anything, is JSON or a table; a form of another site can send neither. */
    static boolean sendsData(HttpServletRequest request) {
        String type = request.getContentType();
        boolean empty = request.getContentLengthLong() == 0
                || request.getContentLengthLong() < 0 && request.getHeader("Transfer-Encoding") == null;
        return type == null ? empty : DATA.contains(type.split(";", 2)[0].strip().toLowerCase(Locale.ROOT));
    }

    private static boolean isLoopback(String address) {
        try {
            return InetAddress.getByName(address).isLoopbackAddress();
        } catch (UnknownHostException e) {
            return false;
        }
    }
}
