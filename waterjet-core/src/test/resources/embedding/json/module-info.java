module workshop {
    requires dev.waterjet.core;
    requires com.fasterxml.jackson.databind;
}
