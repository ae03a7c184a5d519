package dev.waterjet.examples;

import dev.waterjet.cost.CostItem;
import dev.waterjet.cost.Prices;
import dev.waterjet.head.HeadInventory;
import dev.waterjet.pierce.PierceSettings;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;
import picocli.CommandLine.Option;
import static dev.waterjet.measure.Measures.kilowatts;

/** The options that describe a shop: its pump, its shelf, its prices, what it knows of piercing. */
final class ShopOptions {

    /** Prices of the workshop on Hollow Ridge, invented for the demonstration. */
    private static final Map<CostItem, Double> INVENTED = Map.of(
            CostItem.MACHINE, 90.0,
            CostItem.WATER, 3.0,
            CostItem.ABRASIVE, 0.45,
            CostItem.ENERGY, 0.25,
            CostItem.SLUDGE, 0.15,
            CostItem.ORIFICE, 20.0,
            CostItem.TUBE, 110.0,
            CostItem.SHEET, 0.0);

    @Option(
            names = "--power",
            converter = Typed.Power.class,
            paramLabel = "<power>",
            description = "Hydraulic power of the pump: motor power times efficiency. Usual: 22 kW.")
    private Quantity<Power> power = kilowatts(22);

    @Option(
            names = "--shelf",
            paramLabel = "<file>",
            description = "CSV of the sizes on the shelf, with the header \"part,size\" and rows such as"
                    + " \"orifice,0.25 mm\", \"tube,0.76 mm\", \"length,76 mm\", \"mesh,80\", \"flow,300 g/min\"."
                    + " Without it, sizes in common use.")
    private Optional<Path> shelf = Optional.empty();

    @Option(
            names = "--price",
            paramLabel = "<item>=<amount>",
            description =
                    "A price of your own, once for each item: machine (per hour), water (m3), abrasive (kg), energy"
                            + " (kWh), sludge (kg), orifice, tube, sheet (each). Without any, invented prices of the Hollow Ridge"
                            + " workshop.")
    private Map<CostItem, Double> prices = new EnumMap<>(CostItem.class);

    @Option(names = "--currency", paramLabel = "<name>", description = "Name of the currency. Usual: crowns.")
    private String currency = "crowns";

    @Option(
            names = "--pierce-strength",
            converter = Typed.Pressure.class,
            paramLabel = "<strength>",
            description = "Strength that keeps a brittle or laminated plate whole: between its layers, or in tension.")
    private Optional<Quantity<Pressure>> strength = Optional.empty();

    @Option(
            names = "--pierce-room",
            converter = Typed.Length.class,
            paramLabel = "<width>",
            description = "Free width of scrap around a pierce point, so that the jet can move while it pierces.")
    private Optional<Quantity<Length>> room = Optional.empty();

    Quantity<Power> power() {
        return power;
    }

    HeadInventory shelf() {
        return shelf.map(file -> HeadInventory.parse(TextFiles.read(file))).orElseGet(HeadInventory::standard);
    }

    Prices rates() {
        Prices rates = Prices.of(currency);
        for (Map.Entry<CostItem, Double> price : (isInvented() ? INVENTED : prices).entrySet()) {
            rates = rates.with(price.getKey(), price.getValue());
        }
        return rates;
    }

    boolean isInvented() {
        return prices.isEmpty();
    }

    PierceSettings piercing() {
        PierceSettings practice = PierceSettings.defaults();
        if (strength.isPresent()) {
            practice = practice.withStrength(strength.get());
        }
        return room.isPresent() ? practice.withPierceClearance(room.get()) : practice;
    }
}
