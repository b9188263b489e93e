package withy.shop;

/** The shop's memory can't do what was asked, said so that it can be mended: what, where, what is allowed, and a line that starts "Maybe". */
public final class ShopFault extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** What kind of fault, by what the user does about it. */
    public enum Kind {
        /** Disk, rights or another process stand in the way. */
        DISK,
        /** What is there can't be what was written. */
        DAMAGED,
        /** What was asked does not go with what is there. */
        REFUSED,
        /** Somebody changed the record in between. */
        STALE
    }

    private final Kind kind;

    ShopFault(Kind kind, String problem, String maybe) {
        super(problem + "\nMaybe " + maybe);
        this.kind = kind;
    }

    /** What was asked does not go with what is there. */
    public static ShopFault refused(String problem, String maybe) {
        return new ShopFault(Kind.REFUSED, problem, maybe);
    }

    static ShopFault disk(String problem, String maybe) {
        return new ShopFault(Kind.DISK, problem, maybe);
    }

    static ShopFault damaged(String problem) {
        return new ShopFault(Kind.DAMAGED, problem, "bring back the last good one: withy restore BACKUP.");
    }

    /** True where what is wrong is on the disk, not in what was asked. */
    public boolean ofDisk() {
        return kind == Kind.DISK || kind == Kind.DAMAGED;
    }

    /** What kind of fault. */
    public Kind kind() {
        return kind;
    }
}
