package withy.web;

/** Words made safe for a drawing, where no template does it. */
final class Markup {
    private Markup() {}

    static String escape(String words) {
        return words.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }
}
