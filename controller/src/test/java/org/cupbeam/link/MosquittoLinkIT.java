package org.cupbeam.link;

/** The link over Mosquitto. */
class MosquittoLinkIT extends LinkContract {
    @Override
    Broker broker() throws Exception {
        Mosquitto.program("mosquitto");
        return Mosquitto.open(folder);
    }
}
