package tramontane.host.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.osgi.service.component.runtime.ServiceComponentRuntime;
import org.osgi.service.component.runtime.dto.ComponentConfigurationDTO;
import org.osgi.service.component.runtime.dto.ComponentDescriptionDTO;
import org.osgi.test.common.annotation.InjectService;
import org.osgi.test.junit5.service.ServiceExtension;

@ExtendWith(ServiceExtension.class)
class ComponentsSatisfiedTest {
    @InjectService
    ServiceComponentRuntime runtime;

    @Test
    void aComponentOfAnExtensionIsGivenTheLog(
            @InjectService(filter = "(tramontane.test=probe)") BooleanSupplier probe) {
        assertTrue(probe.getAsBoolean());
    }

    @Test
    void everyEnabledComponentIsSatisfied() {
        List<String> waiting = new ArrayList<>();
        for (ComponentDescriptionDTO component : runtime.getComponentDescriptionDTOs()) {
            if (!component.defaultEnabled) {
                continue;
            }
            List<ComponentConfigurationDTO> configurations = List
                    .copyOf(runtime.getComponentConfigurationDTOs(component));
            if (configurations.isEmpty()) {
                waiting.add(component.name + " has no configuration");
            }
            for (ComponentConfigurationDTO configuration : configurations) {
                if (configuration.state != ComponentConfigurationDTO.SATISFIED
                        && configuration.state != ComponentConfigurationDTO.ACTIVE) {
                    waiting.add(component.name + " in state " + configuration.state);
                }
            }
        }
        assertEquals(List.of(), waiting);
    }
}
