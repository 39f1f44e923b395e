package tramontane.selection;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class ArchitectureTest {

    private static final JavaClasses CLASSES = new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tramontane");

    /** It judges by figures: it knows no analysis, and no catalogue. */
    @Test
    void selectionKnowsTheApiOnly() {
        classes().that().resideInAPackage("tramontane.selection..").should().onlyDependOnClassesThat()
                .resideInAnyPackage("java..", "tramontane.selection..", "tramontane.analysis", "tramontane.model", "tramontane.physics..",
                        "org.osgi..").check(CLASSES);
    }
}
