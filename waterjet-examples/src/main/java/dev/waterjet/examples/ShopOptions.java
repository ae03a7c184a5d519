package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.kilowatts;

import dev.waterjet.cost.CostItem;
import dev.waterjet.cost.Prices;
import dev.waterjet.examples.shop.ShopFile;
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
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Options of the shop: pump, head inventory, prices, piercing. */
final class ShopOptions {

    /** Example prices of the workshop on Hollow Ridge. */
    private static final Map<CostItem, Double> EXAMPLE_PRICES = Map.of(
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
            description = "Rated hydraulic power of the pump: motor power times efficiency. Default: 22 kW.")
    private Quantity<Power> power = kilowatts(22);

    @Option(
            names = "--inventory",
            paramLabel = "<file>",
            description = "CSV of the sizes in stock, with the header \"part,size\" and rows such as"
                    + " \"orifice,0.25 mm\", \"tube,0.76 mm\", \"length,76 mm\", \"mesh,80\", \"flow,300 g/min\"."
                    + " Default: sizes in common use.")
    private Optional<Path> inventory = Optional.empty();

    @Option(
            names = "--price",
            paramLabel = "<item>=<amount>",
            description = "Price of an item, once for each: machine (per hour), water (m3), abrasive (kg), energy"
                    + " (kWh), sludge (kg), orifice, tube, sheet (each). Default: example prices of the workshop on Hollow"
                    + " Ridge.")
    private Map<CostItem, Double> prices = new EnumMap<>(CostItem.class);

    @Option(names = "--currency", paramLabel = "<name>", description = "Name of the currency. Default: cost units.")
    private String currency = "cost units";

    @Option(
            names = "--plate-strength",
            converter = Typed.Pressure.class,
            paramLabel = "<strength>",
            description = "Strength of a brittle or laminated plate: in tension, or between its layers.")
    private Optional<Quantity<Pressure>> strength = Optional.empty();

    @Option(
            names = "--pierce-clearance",
            converter = Typed.Length.class,
            paramLabel = "<width>",
            description = "Width of scrap around a pierce point; a moving pierce requires it.")
    private Optional<Quantity<Length>> clearance = Optional.empty();

    @Spec(Spec.Target.MIXEE)
    private CommandSpec program;

    Quantity<Power> power() {
        return power;
    }

    HeadInventory inventory() {
        return inventory
                .map(file -> HeadInventory.parse(TextFiles.read(file)))
                .or(shop()::inventory)
                .orElseGet(HeadInventory::standard);
    }

    private ShopFile shop() {
        return ShopDefaults.of(program.commandLine());
    }

    /** Prices of the shop file, overridden by those of the options. */
    private Map<CostItem, Double> stated() {
        Map<CostItem, Double> stated = new EnumMap<>(CostItem.class);
        stated.putAll(shop().prices());
        stated.putAll(prices);
        return stated;
    }

    Prices rates() {
        Prices rates = Prices.of(currency);
        for (Map.Entry<CostItem, Double> price : (hasExamplePrices() ? EXAMPLE_PRICES : stated()).entrySet()) {
            rates = rates.with(price.getKey(), price.getValue());
        }
        return rates;
    }

    boolean hasExamplePrices() {
        return stated().isEmpty();
    }

    PierceSettings piercing() {
        PierceSettings settings = PierceSettings.defaults();
        if (strength.isPresent()) {
            settings = settings.withStrength(strength.get());
        }
        return clearance.isPresent() ? settings.withPierceClearance(clearance.get()) : settings;
    }
}
