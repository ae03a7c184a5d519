import dev.waterjet.measure.*;
import dev.waterjet.evidence.*;
import dev.waterjet.uncertainty.*;
import dev.waterjet.fit.*;
import dev.waterjet.vessel.*;
import dev.waterjet.water.*;
import dev.waterjet.circuit.*;
import dev.waterjet.hydraulics.*;
import dev.waterjet.jet.*;
import dev.waterjet.material.*;
import dev.waterjet.feed.*;
import dev.waterjet.calibrate.*;
import dev.waterjet.kerf.*;
import dev.waterjet.quality.*;
import dev.waterjet.part.*;
import dev.waterjet.toolpath.*;
import dev.waterjet.sheet.*;
import dev.waterjet.simulate.*;
import dev.waterjet.motion.*;
import dev.waterjet.program.*;
import dev.waterjet.surface.*;
import dev.waterjet.pierce.*;
import dev.waterjet.cost.*;
import dev.waterjet.head.*;
import dev.waterjet.placement.*;
import dev.waterjet.plan.*;
import static dev.waterjet.measure.Measures.*;
import java.util.*;
import javax.measure.*;
import javax.measure.quantity.*;

/** Prints a name and values: quantities in units of the trade, numbers with four figures. */
void show(String name, Object... values) {
    StringJoiner line = new StringJoiner(", ", name + ": ", "");
    for (Object value : values) {
        line.add(readable(value));
    }
    System.out.println(line);
}

/** Writes a value for people. */
String readable(Object value) {
    if (value instanceof Quantity<?> quantity) {
        for (Kind<?> kind : Kind.all()) {
            if (kind.siUnit().equals(quantity.getUnit().getSystemUnit())) {
                return QuantityText.forPeople(kind, quantity.toSystemUnit().getValue().doubleValue());
            }
        }
    }
    return value instanceof Double number ? QuantityText.round(number, 4) : String.valueOf(value);
}
