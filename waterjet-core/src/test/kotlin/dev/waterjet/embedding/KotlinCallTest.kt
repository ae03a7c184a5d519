package dev.waterjet.embedding

import dev.waterjet.evidence.Estimate
import dev.waterjet.quality.CutQuality
import dev.waterjet.feed.MachinabilityFeed
import dev.waterjet.hydraulics.Orifice
import dev.waterjet.jet.Abrasive
import dev.waterjet.jet.CuttingHead
import dev.waterjet.jet.FocusingTube
import dev.waterjet.jet.Mesh
import dev.waterjet.material.Materials
import dev.waterjet.material.Workpiece
import dev.waterjet.measure.DomainException
import dev.waterjet.measure.Kind
import dev.waterjet.measure.Measures.gramsPerMinute
import dev.waterjet.measure.Measures.megapascals
import dev.waterjet.measure.Measures.millimetres
import dev.waterjet.measure.QuantityArray
import dev.waterjet.measure.Units
import javax.measure.quantity.Speed
import org.assertj.core.api.Assertions.assertThat
import org.junit.jupiter.api.Test
import org.junit.jupiter.api.assertThrows

/** The library as Kotlin sees it: no platform types, no casts, no warnings. */
class KotlinCallTest {

    private val head = CuttingHead.of(Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76.0)))
    private val jet = head.jet(megapascals(380.0), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300.0))
    private val titanium = Materials.standard().get("titanium")

    @Test
    fun feedOfAPlate() {
        val feed: Estimate<Speed> =
            MachinabilityFeed.published().feed(jet, Workpiece.of(titanium, millimetres(6.0)), CutQuality.FINE)

        assertThat(feed.to(Units.MILLIMETRE_PER_MINUTE)).isBetween(150.0, 250.0)
        assertThat(feed.cautions().map { it.code() }).contains("grain-to-bore")
    }

    @Test
    fun curveInOneExpression() {
        val curve = MachinabilityFeed.published()
            .curve(jet, titanium, 3.0, QuantityArray.parse(Kind.LENGTH, "2 mm..20 mm step 2 mm"))

        assertThat(curve.feeds().toSi().toList().zipWithNext { a, b -> a > b }).doesNotContain(false)
    }

    @Test
    fun impossibleValuesAreNamed() {
        val refused = assertThrows<DomainException> { Workpiece.of(titanium, millimetres(-6.0)) }

        assertThat(refused.quantity()).isEqualTo("thickness")
        assertThat(refused.message).contains("-6 mm")
    }
}
