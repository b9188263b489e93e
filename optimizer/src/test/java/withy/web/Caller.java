package withy.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Asks the page without a browser, one request as typed, so that no client mends its headers. */
final class Caller {
    static final String FORM = "Content-Type: application/x-www-form-urlencoded";

    final int port;
    final String cookie;
    final String seal;

    /** Lets itself in as a browser would. */
    Caller(ShopFolder shop) throws IOException {
        port = shop.address().getPort();
        Reply start =
                raw("GET " + shop.address().getPath() + "?" + shop.address().getQuery(), "Host: 127.0.0.1:" + port);
        cookie = found("(?i)set-cookie: ([^;]+;[^\r\n]*)", start.head());
        seal = found("name=\"seal\" value=\"([^\"]+)\"", get("/").body());
    }

    record Reply(int status, String head, String body) {
        /** Where it leads. */
        String location() {
            return found("(?i)location: (\\S+)", head);
        }
    }

    static String found(String pattern, String text) {
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        if (!matcher.find()) {
            throw new AssertionError("no " + pattern + " in " + text);
        }
        return matcher.group(1);
    }

    /** All that a pattern finds. */
    static List<String> all(String pattern, String text) {
        return Pattern.compile(pattern)
                .matcher(text)
                .results()
                .map(one -> one.group(1))
                .toList();
    }

    Reply raw(String line, String... headers) throws IOException {
        return sent(line, "", headers);
    }

    Reply sent(String line, String body, String... headers) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            StringBuilder request = new StringBuilder(line).append(" HTTP/1.1\r\nConnection: close\r\n");
            for (String header : headers) {
                request.append(header).append("\r\n");
            }
            if (line.startsWith("POST") && !List.of(headers).contains("Transfer-Encoding: chunked")) {
                request.append("Content-Length: ").append(body.length()).append("\r\n");
            }
            byte[] asked = request.append("\r\n").append(body).toString().getBytes(StandardCharsets.UTF_8);
            String reply = new String(answer(socket, asked), StandardCharsets.UTF_8);
            int gap = reply.indexOf("\r\n\r\n");
            String head = reply.substring(0, gap);
            String page = reply.substring(gap);
            // a page holds numbers and units together; what is a file must not
            return new Reply(
                    Integer.parseInt(reply.substring(9, 12)),
                    head,
                    head.contains("text/html") ? page.replace('\u00a0', ' ') : page);
        }
    }

    /** What came back. One that refuses what it has not read to its end shuts the line, after its answer. */
    private static byte[] answer(Socket socket, byte[] asked) throws IOException {
        ByteArrayOutputStream came = new ByteArrayOutputStream();
        try {
            socket.getOutputStream().write(asked);
        } catch (SocketException shut) {
            // its answer may still be there to read
        }
        try {
            socket.getInputStream().transferTo(came);
        } catch (SocketException shut) {
            if (came.size() == 0) {
                throw shut;
            }
        }
        return came.toByteArray();
    }

    /** A form sent in pieces, its length not told beforehand. */
    Reply chunked(String path, String pieces) throws IOException {
        return sent("POST " + path, pieces, host(), ticket(), FORM, origin(), "Transfer-Encoding: chunked");
    }

    String host() {
        return "Host: 127.0.0.1:" + port;
    }

    String origin() {
        return "Origin: http://127.0.0.1:" + port;
    }

    /** The cookie as it is sent back. */
    String ticket() {
        return "Cookie: " + cookie.substring(0, cookie.indexOf(';'));
    }

    Reply get(String path) throws IOException {
        return raw("GET " + path, host(), ticket());
    }

    /** A file as it is, without the head of the answer. */
    byte[] file(String path) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            String asked =
                    "GET " + path + " HTTP/1.1\r\nConnection: close\r\n" + host() + "\r\n" + ticket() + "\r\n\r\n";
            byte[] came = answer(socket, asked.getBytes(StandardCharsets.UTF_8));
            int gap = new String(came, StandardCharsets.ISO_8859_1).indexOf("\r\n\r\n");
            return Arrays.copyOfRange(came, gap + 4, came.length);
        }
    }

    /** A page with all that comes by and by. */
    String whole(String path) throws IOException {
        String body = get(path).body();
        while (body.contains("data-rest")) {
            body = get(path + (path.contains("?") ? "&" : "?") + "show=" + found("data-rest=\"([^\"]+)\"", body))
                    .body();
        }
        return body;
    }

    Reply post(String path, String body, String... headers) throws IOException {
        return sent("POST " + path, body, headers);
    }

    /** Begins a talk with one of the ways it may be begun; the step it leads to. */
    String begun(String start) throws IOException {
        return form("/brief", "from", "", "start", start).location().substring("/builds/".length());
    }

    /** A form of the page as the page sends it: name, value, name, value. */
    Reply form(String path, String... fields) throws IOException {
        StringBuilder body = new StringBuilder("seal=").append(seal);
        for (int i = 0; i < fields.length; i += 2) {
            body.append('&')
                    .append(fields[i])
                    .append('=')
                    .append(URLEncoder.encode(fields[i + 1], StandardCharsets.UTF_8));
        }
        return post(path, body.toString(), host(), ticket(), FORM, origin());
    }
}
