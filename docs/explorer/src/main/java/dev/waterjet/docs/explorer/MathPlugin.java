package dev.waterjet.docs.explorer;

import org.teavm.model.ClassHolder;
import org.teavm.model.ClassHolderTransformer;
import org.teavm.model.ClassHolderTransformerContext;
import org.teavm.model.MethodDescriptor;
import org.teavm.model.MethodHolder;
import org.teavm.model.MethodReference;
import org.teavm.model.emit.ProgramEmitter;
import org.teavm.model.emit.ValueEmitter;
import org.teavm.vm.spi.TeaVMHost;
import org.teavm.vm.spi.TeaVMPlugin;

/** Puts {@link MathFunctions} in place of the functions of the same names. */
public final class MathPlugin implements TeaVMPlugin, ClassHolderTransformer {

    /** Creates the plugin; the compiler to script does so. */
    public MathPlugin() {}

    @Override
    public void install(TeaVMHost host) {
        host.add(this);
    }

    @Override
    public void transformClass(ClassHolder type, ClassHolderTransformerContext context) {
        if (type.getName().equals("java.lang.Math")) {
            for (String name : new String[] {"ulp", "rint", "expm1", "log1p"}) {
                replace(type, context, new MethodDescriptor(name, double.class, double.class));
            }
            replace(type, context, new MethodDescriptor("hypot", double.class, double.class, double.class));
        }
    }

    private static void replace(ClassHolder type, ClassHolderTransformerContext context, MethodDescriptor method) {
        MethodHolder holder = type.getMethod(method);
        if (holder == null) {
            throw new IllegalStateException("Math has no " + method);
        }
        ProgramEmitter program = ProgramEmitter.create(holder, context.getHierarchy());
        ValueEmitter[] arguments = new ValueEmitter[method.parameterCount()];
        for (int i = 0; i < arguments.length; i++) {
            arguments[i] = program.var(i + 1, double.class);
        }
        program.invoke(new MethodReference("dev.waterjet.docs.explorer.MathFunctions", method), arguments)
                .returnValue();
    }
}
