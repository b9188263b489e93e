package withy.web;

import gg.jte.html.OwaspHtmlTemplateOutput;
import gg.jte.output.StringOutput;
import java.util.Set;
import java.util.regex.MatchResult;
import org.jspecify.annotations.Nullable;
import withy.report.Unbroken;

/** Writes a template so that no line breaks between a number and its unit or within a size; values of attributes and what can be typed over stay as they are. */
final class Lines extends OwaspHtmlTemplateOutput {
    /** Elements whose text is a value, or is read by machine. */
    private static final Set<String> AS_THEY_ARE = Set.of("textarea", "option", "title", "script", "style", "code");

    private boolean read;

    Lines(StringOutput out) {
        super(out);
    }

    @Override
    public void setContext(String tag, @Nullable String attribute) {
        read = attribute == null && !AS_THEY_ARE.contains(tag);
        super.setContext(tag, attribute);
    }

    @Override
    public void writeUserContent(@Nullable String words) {
        if (!read || words == null) {
            super.writeUserContent(words);
            return;
        }
        String held = Unbroken.of(words);
        int from = 0;
        for (MatchResult size : Unbroken.sizes(held)) {
            super.writeUserContent(held.substring(from, size.start()));
            writeContent("<span class=\"whole\">");
            super.writeUserContent(size.group());
            writeContent("</span>");
            from = size.end();
        }
        super.writeUserContent(held.substring(from));
    }
}
