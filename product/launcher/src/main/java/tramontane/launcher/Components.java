package tramontane.launcher;

import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.Collection;
import java.util.Optional;
import org.osgi.framework.Bundle;

/**
 * Asks Declarative Services why a component does not come. By reflection: its API comes with the product, as a bundle, and
 * a second copy on the launcher's class path would be another type.
 */
final class Components {
    private static final int UNSATISFIED_REFERENCE = 2;

    private Components() {
    }

    /**
     * What the components of a bundle wait for.
     *
     * @param runtime the service {@code org.osgi.service.component.runtime.ServiceComponentRuntime}
     */
    static Optional<String> unsatisfied(Object runtime, Bundle bundle) {
        try {
            Collection<?> descriptions = (Collection<?>) call(runtime, "getComponentDescriptionDTOs",
                    new Object[] {new Bundle[] {bundle}}, Bundle[].class);
            for (Object description : descriptions) {
                Class<?> type = description.getClass();
                Collection<?> configurations = (Collection<?>) call(runtime, "getComponentConfigurationDTOs",
                        new Object[] {description}, type);
                for (Object configuration : configurations) {
                    Optional<String> reason = reason(description, configuration);
                    if (reason.isPresent()) {
                        return reason;
                    }
                }
            }
            return Optional.empty();
        } catch (ReflectiveOperationException otherApi) {
            return Optional.empty();
        }
    }

    private static Optional<String> reason(Object description, Object configuration)
            throws ReflectiveOperationException {
        String component = "component " + field(description, "name");
        Object failure = field(configuration, "failure");
        if (failure instanceof String trace && !trace.isBlank()) {
            return Optional.of(component + " failed: " + trace.lines().findFirst().orElse(""));
        }
        if (!Integer.valueOf(UNSATISFIED_REFERENCE).equals(field(configuration, "state"))) {
            return Optional.empty();
        }
        Object[] missing = (Object[]) field(configuration, "unsatisfiedReferences");
        for (Object reference : missing) {
            Object name = field(reference, "name");
            for (Object known : (Object[]) field(description, "references")) {
                if (name.equals(field(known, "name"))) {
                    return Optional.of(component + " waits for a service " + field(known, "interfaceName")
                            + ", which nothing gives");
                }
            }
        }
        return Optional.of(component + " waits for " + Arrays.toString(missing));
    }

    private static Object call(Object target, String name, Object[] arguments, Class<?>... types)
            throws ReflectiveOperationException {
        for (Class<?> api : target.getClass().getInterfaces()) {
            if (api.getName().equals("org.osgi.service.component.runtime.ServiceComponentRuntime")) {
                Method method = api.getMethod(name, types);
                return method.invoke(target, arguments);
            }
        }
        throw new NoSuchMethodException(name);
    }

    private static Object field(Object dto, String name) throws ReflectiveOperationException {
        return dto.getClass().getField(name).get(dto);
    }
}
