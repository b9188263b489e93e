package withy.catalog;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;

/** Copies a part with other facts. Every part is a record with a component {@code facts}, so that one way serves all kinds. */
final class PartCopy {
    private PartCopy() {}

    static Part of(Part part, PartFacts facts) {
        RecordComponent[] components = part.getClass().getRecordComponents();
        Class<?>[] types = new Class<?>[components.length];
        Object[] values = new Object[components.length];
        try {
            for (int i = 0; i < components.length; i++) {
                types[i] = components[i].getType();
                values[i] = types[i] == PartFacts.class
                        ? facts
                        : components[i].getAccessor().invoke(part);
            }
            Constructor<? extends Part> constructor = part.getClass().getDeclaredConstructor(types);
            return constructor.newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("a part of kind " + part.kind() + " can't be copied", e);
        }
    }
}
