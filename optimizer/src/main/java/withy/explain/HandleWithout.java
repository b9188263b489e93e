package withy.explain;

import withy.brief.Brief.Handle;

/** Handle wishes without one of them. */
final class HandleWithout {
    private HandleWithout() {}

    static Handle form(Handle h) {
        return new Handle(null, h.foreGrip(), h.trigger(), h.movingHood(), h.keeper(), h.action(), h.mixedGrips());
    }

    static Handle foreGrip(Handle h) {
        return new Handle(h.form(), null, h.trigger(), h.movingHood(), h.keeper(), h.action(), h.mixedGrips());
    }

    static Handle trigger(Handle h) {
        return new Handle(h.form(), h.foreGrip(), null, h.movingHood(), h.keeper(), h.action(), h.mixedGrips());
    }

    static Handle movingHood(Handle h) {
        return new Handle(h.form(), h.foreGrip(), h.trigger(), null, h.keeper(), h.action(), h.mixedGrips());
    }

    static Handle keeper(Handle h) {
        return new Handle(h.form(), h.foreGrip(), h.trigger(), h.movingHood(), null, h.action(), h.mixedGrips());
    }

    static Handle action(Handle h) {
        return new Handle(h.form(), h.foreGrip(), h.trigger(), h.movingHood(), h.keeper(), null, h.mixedGrips());
    }

    static Handle oneMaterial(Handle h) {
        return new Handle(h.form(), h.foreGrip(), h.trigger(), h.movingHood(), h.keeper(), h.action(), true);
    }
}
