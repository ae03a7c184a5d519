package dev.waterjet.examples.plan;

import dev.waterjet.cost.Prices;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.sheet.Slats;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;

/**
 * Shop for which a plan is made.
 *
 * @param rates prices
 * @param hasExamplePrices whether the prices are those of the example
 * @param pierceSettings settings of piercing
 * @param parts number of parts in the batch
 * @param slats slats of the table
 * @param shearStrength shear strength of the plate, if tabs are required
 * @param drawnTabs number of tabs that a drawing marks, which are in its program
 * @param headSelection explanation of the head selection, if the head was not given
 */
public record Shop(
        Prices rates,
        boolean hasExamplePrices,
        PierceSettings pierceSettings,
        int parts,
        Slats slats,
        Optional<Quantity<Pressure>> shearStrength,
        int drawnTabs,
        Optional<String> headSelection) {}
