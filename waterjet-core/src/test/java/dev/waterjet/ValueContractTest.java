package dev.waterjet;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Objects;
import java.util.function.BiPredicate;
import org.junit.jupiter.api.Test;

/** The contract passes a sound type and finds what is wrong with others. */
class ValueContractTest {

    /** A bolt whose equality and copies are as sound as the test wants them. */
    private static final class Bolt {
        private final double size;
        private final double length;
        private final BiPredicate<Bolt, Bolt> equality;

        Bolt(double size, double length, BiPredicate<Bolt, Bolt> equality) {
            this.size = size;
            this.length = length;
            this.equality = equality;
        }

        static boolean sameSizes(Bolt one, Bolt other) {
            return one.size == other.size && one.length == other.length;
        }

        double length() {
            return length;
        }

        double size() {
            return size;
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Bolt that && equality.test(this, that);
        }

        @Override
        public int hashCode() {
            return Objects.hash(size, length);
        }

        @Override
        public String toString() {
            return "M" + size + " x " + length;
        }
    }

    private static ValueContract<Bolt> contract(BiPredicate<Bolt, Bolt> equality, double sizeOfLonger) {
        return ValueContract.of(() -> new Bolt(8, 40, equality))
                .change("length", bolt -> new Bolt(sizeOfLonger, 60, equality), Bolt::length, 60.0)
                .tells("size", Bolt::size, 8.0)
                .differs("size", new Bolt(10, 40, equality))
                .says("M8", "40");
    }

    @Test
    void aSoundTypePasses() {
        assertThatCode(contract(Bolt::sameSizes, 8)::check).doesNotThrowAnyException();
    }

    @Test
    void anEqualityThatSeesTooLittleFails() {
        assertThatThrownBy(contract((one, other) -> one.size == other.size, 8)::check)
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("length");
    }

    @Test
    void anEqualityThatSeesTooMuchFails() {
        assertThatThrownBy(contract((one, other) -> false, 8)::check)
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("a second one");
    }

    @Test
    void aCopyThatChangesMoreThanItSaysFails() {
        assertThatThrownBy(contract(Bolt::sameSizes, 9)::check)
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("size after the change of length");
    }

    @Test
    void aTextThatHidesAPartFails() {
        assertThatThrownBy(contract(Bolt::sameSizes, 8).says("steel")::check).isInstanceOf(AssertionError.class);
    }

    @Test
    void anAccessorThatTellsAnotherValueFails() {
        assertThatThrownBy(contract(Bolt::sameSizes, 8).tells("length", Bolt::length, 41.0)::check)
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("length is 40");
    }
}
