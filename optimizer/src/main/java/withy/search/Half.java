package withy.search;

import java.util.ArrayList;
import java.util.List;

/** Which blanks of a ground one of two threads looks at. */
enum Half {
    /** The first, the third and so on; with one thread, all. */
    ODD,
    /** The second, the fourth and so on. */
    EVEN;

    /** Of sites that lie blank by blank, those of every other blank. */
    List<Site> of(List<Site> sites) {
        List<Site> own = new ArrayList<>();
        int blanks = 0;
        for (int i = 0; i < sites.size(); i++) {
            if (i == 0 || sites.get(i).shape() != sites.get(i - 1).shape()) {
                blanks++;
            }
            if (blanks % 2 == 1 == (this == ODD)) {
                own.add(sites.get(i));
            }
        }
        return own;
    }
}
