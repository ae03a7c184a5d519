/**
 * Calculations for abrasive-waterjet cutting: what pump, head, jet, material and machine do to a part, in units, with
 * the evidence behind every number.
 */
module dev.waterjet.core {
    requires transitive java.measure;
    requires tech.units.indriya;
    requires commons.math3;
    requires static org.jspecify;
    requires static org.apiguardian.api;
    requires static com.fasterxml.jackson.annotation;

    exports dev.waterjet.calibrate;
    exports dev.waterjet.circuit;
    exports dev.waterjet.cost;
    exports dev.waterjet.evidence;
    exports dev.waterjet.feed;
    exports dev.waterjet.fit;
    exports dev.waterjet.head;
    exports dev.waterjet.hydraulics;
    exports dev.waterjet.jet;
    exports dev.waterjet.kerf;
    exports dev.waterjet.material;
    exports dev.waterjet.measure;
    exports dev.waterjet.motion;
    exports dev.waterjet.part;
    exports dev.waterjet.pierce;
    exports dev.waterjet.placement;
    exports dev.waterjet.plan;
    exports dev.waterjet.program;
    exports dev.waterjet.quality;
    exports dev.waterjet.sheet;
    exports dev.waterjet.simulate;
    exports dev.waterjet.surface;
    exports dev.waterjet.toolpath;
    exports dev.waterjet.uncertainty;
    exports dev.waterjet.vessel;
    exports dev.waterjet.water;
}
