package withy.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.function.Consumer;
import withy.app.Answer;
import withy.web.Bench.Asked;

/**
 * Draws what the first customer will see before he comes, so that the first page after a start costs no more than any later one. Nothing is kept: what is
 * drawn is handed out once, and no step of a talk is begun.
 */
final class FirstPages {
    /** A step that is in no folder and that no address leads to. */
    private static final String NOWHERE = "";

    private final Pages pages;
    private final Consumer<String> drawn;

    /**
     * Draws nothing yet.
     *
     * @param drawn takes each page as it is drawn
     */
    FirstPages(Pages pages, Consumer<String> drawn) {
        this.pages = pages;
        this.drawn = drawn;
    }

    /** The first page, and the brief of a beginning. */
    void talk(String start) {
        BriefPage brief = new BriefPage(pages);
        drawn.accept(pages.text("start", brief.startView(List.of(), "")));
        drawn.accept(pages.text("brief", brief.view(null, start, Starts.brief(start), false)));
    }

    /** The builds of a brief as far as they are known. */
    void builds(ObjectNode typed, Asked asked, Answer answer) {
        Step step = new Step(NOWHERE, NOWHERE, "", typed);
        drawn.accept(pages.text("builds", new BuildsPage(pages).view(step, asked, answer, "builds.coming.rest")));
    }
}
