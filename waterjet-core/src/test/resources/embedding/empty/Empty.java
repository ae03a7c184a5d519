class Empty {

    public static void main(String[] arguments) {
        System.out.println(0.0);
    }
}
