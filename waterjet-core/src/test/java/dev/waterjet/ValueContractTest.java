package dev.waterjet;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
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
                .has("size", Bolt::size, 8.0)
                .differs("size", new Bolt(10, 40, equality))
                .prints("M8", "40");
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
        assertThatThrownBy(contract(Bolt::sameSizes, 8).prints("steel")::check).isInstanceOf(AssertionError.class);
    }

    @Test
    void anAccessorThatTellsAnotherValueFails() {
        assertThatThrownBy(contract(Bolt::sameSizes, 8).has("length", Bolt::length, 41.0)::check)
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("length is 40");
    }

    /** A rod that checks its length where it is made, but not where it is read. */
    private static final class UnguardedRod implements Serializable {

        private static final long serialVersionUID = 1L;

        private final double length;

        UnguardedRod(double length) {
            this.length = Require.finite("length", length, Units.METRE);
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof UnguardedRod that && Double.compare(length, that.length) == 0;
        }

        @Override
        public int hashCode() {
            return Double.hashCode(length);
        }

        @Override
        public String toString() {
            return "a rod";
        }
    }

    @Test
    void aTypeThatReadsWithoutACheckFails() {
        assertThatThrownBy(ValueContract.of(() -> new UnguardedRod(2))::check)
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("2.0 as double 0 made NaN");
    }

    /** A rod with a record as serial form, but a door beside it. */
    private static final class OpenRod implements Serializable {

        private static final long serialVersionUID = 1L;

        private record Values(double length) implements Serializable {
            Values {
                length = Require.positive("length", length, Units.METRE);
            }

            private Object readResolve() {
                return new OpenRod(this);
            }
        }

        private final transient Values values;

        OpenRod(Values values) {
            this.values = values;
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof OpenRod that && values.equals(that.values);
        }

        @Override
        public int hashCode() {
            return values.hashCode();
        }

        @Override
        public String toString() {
            return "a rod";
        }

        private Object writeReplace() {
            return values;
        }
    }

    @Test
    void aTypeThatCanBeReadBesideItsSerialFormFails() {
        assertThatThrownBy(ValueContract.of(() -> new OpenRod(new OpenRod.Values(2)))::check)
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("a form without fields");
    }

    /** A safe form, but two zeros. */
    private record Level(double height) implements Serializable {
        Level {
            if (!Double.isFinite(height)) {
                throw new ArithmeticException("height is " + height);
            }
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Level that && height == that.height;
        }

        @Override
        public int hashCode() {
            return Double.hashCode(height);
        }
    }

    @Test
    void aTypeWhoseEqualZerosDifferInHashFails() {
        assertThatThrownBy(ValueContract.of(() -> new Level(2))::check)
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("made -0");
    }

    /** Everything right. */
    private record SafeLevel(double height) implements Serializable {
        SafeLevel {
            height = Require.finite("height", height, Units.METRE);
        }
    }

    @Test
    void aSafeTypePasses() {
        assertThatCode(ValueContract.of(() -> new SafeLevel(2))::check).doesNotThrowAnyException();
    }
}
