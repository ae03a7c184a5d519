package dev.waterjet.calibrate;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Value that is made when it is first asked for. Making it twice from two threads does no harm, as both are equal. */
final class Once<T> implements Supplier<T> {

    private final Supplier<T> maker;
    private volatile @Nullable T made;

    Once(Supplier<T> maker) {
        this.maker = maker;
    }

    @Override
    public T get() {
        T known = made;
        if (known == null) {
            known = maker.get();
            made = known;
        }
        return known;
    }
}
