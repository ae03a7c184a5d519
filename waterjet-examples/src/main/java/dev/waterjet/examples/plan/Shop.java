package dev.waterjet.examples.plan;

import dev.waterjet.cost.Prices;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.sheet.Slats;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;

/**
 * The shop that a plan is made for.
 *
 * @param rates its prices
 * @param isInvented whether the prices are those of the demonstration
 * @param practice what it can do and knows when it pierces
 * @param parts how many parts are cut in one go
 * @param slats the slats of its table
 * @param shearStrength shear strength of the plate, if tabs are to be sized
 * @param whyHead why the head was chosen, if it was not given
 */
public record Shop(
        Prices rates,
        boolean isInvented,
        PierceSettings practice,
        int parts,
        Slats slats,
        Optional<Quantity<Pressure>> shearStrength,
        Optional<String> whyHead) {}
