module workshop {
    requires dev.waterjet.core;
}
