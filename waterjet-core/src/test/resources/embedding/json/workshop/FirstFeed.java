package workshop;

import com.fasterxml.jackson.databind.ObjectMapper;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;

class FirstFeed {

    public static void main(String[] arguments) throws Exception {
        System.out.println(new ObjectMapper().writeValueAsString(Estimate.of(Kind.SPEED, 0.01, 0.001)));
    }
}
