Console.WriteLine("simfeel");
